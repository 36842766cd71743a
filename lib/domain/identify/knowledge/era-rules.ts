/**
 * Hints to the year. All of them overlap by maker and factory, so they are ranges and none decides;
 * all are common practice or from memory.
 */
import type { EraRule } from './rule'

const getter = (choice: string, era: EraRule['era'], words: string): EraRule => ({
  id: `getter-${choice}`,
  observation: 'getterShape',
  when: {},
  seen: [choice],
  era,
  sentence: `${words}: mostly ${era[0]} to ${era[1] ?? 'today'}; makers overlap.`,
  source: 'practice',
  strength: 'fair',
})

export const ERA_RULES: readonly EraRule[] = [
  getter('cup', [1930, 1949], 'Flat pan or cup on a stem'),
  getter('square', [1946, 1957], 'Rectangular or square getter'),
  getter('d', [1950, 1960], 'D-shaped getter wire'),
  getter('ring', [1956, null], 'Round getter ring of larger diameter'),
  getter('disc', [1960, null], 'Small ring, dimpled or saucer disc'),
  {
    id: 'smoked-glass',
    observation: 'glass',
    when: { base: ['octal'] },
    seen: ['smoked'],
    era: [1940, 1960],
    sentence: 'Black or smoked glass is mostly met on octals of the 1940s and 1950s.',
    source: 'practice',
    strength: 'fair',
  },
  {
    id: 'sprayed-glass',
    observation: 'glass',
    when: {},
    seen: ['sprayed'],
    era: [1930, 1945],
    sentence: 'Glass sprayed with a metal shield belongs to older bottles.',
    source: 'memory',
    strength: 'fair',
  },
  {
    id: 'metal-collar',
    observation: 'baseMaterial',
    when: { typeId: ['EL34', '5AR4'] },
    seen: ['collar'],
    era: [1953, 1961],
    sentence: 'A metal ring round the base of an EL34 or GZ34 is of the 1950s.',
    source: 'collar-page',
    strength: 'fair',
  },
  {
    id: 'coin-base',
    observation: 'baseMaterial',
    when: { base: ['octal'] },
    seen: ['coin'],
    era: [1955, null],
    sentence: 'The flat disc (coin) base is met on late US bottles.',
    source: 'memory',
    strength: 'fair',
  },
  {
    id: 'long-plates',
    observation: 'plateLength',
    when: { typeId: ['12AX7'] },
    seen: ['long'],
    era: [1947, 1964],
    sentence: 'In the ECC83 long %plates came before short ones; some are made long again today.',
    source: 'etched-change',
    strength: 'slight',
  },
  {
    id: 'short-plates',
    observation: 'plateLength',
    when: { typeId: ['12AX7'] },
    seen: ['short'],
    era: [1957, null],
    sentence: 'Short %plates in the ECC83 come after the long ones.',
    source: 'etched-change',
    strength: 'fair',
  },
]
