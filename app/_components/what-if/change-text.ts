/** What is changed, in one sentence: it heads the answer, and is all of the form that is printed. */
import { SOLID_STATE } from '@/lib/domain/amp/supply-facts'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { Change, ProposedTube } from '@/lib/domain/circuit/change/change'
import { resistanceText, socketList } from '@/lib/domain/circuit/circuit-text'
import type { Words } from '@/lib/domain/words'

const nameOf = (tube: ProposedTube): string => (tube.kind === 'type' ? `an average ${tube.designation}` : tube.mark)

/** Sockets with the same proposal are named together. */
function tubesText({ tubes }: Change): string[] {
  if (!tubes) return []
  if ('all' in tubes) return [`${nameOf(tubes.all)} in every socket`]
  const names = new Map<string, string[]>()
  for (const [position, tube] of Object.entries(tubes.bySocket)) {
    const name = nameOf(tube)
    names.set(name, [...(names.get(name) ?? []), position])
  }
  return [...names].map(([name, positions]) => `${name} in ${socketList(positions)}`)
}

/** A typed figure as it was meant: "−45.5 V". */
const figure = (value: number, unit: string): string => `${String(value).replace('-', '\u2212')} ${unit}`

/** Empty: nothing is changed. */
export function changeText(change: Change, { markedMainsVolts }: AmpCircuit, { mains }: Words): string {
  const { gridVolts, cathodeOhms, wallVolts, rectifier, pulled } = change
  const parts = [
    ...tubesText(change),
    ...(gridVolts === undefined
      ? []
      : [`the grid supply at ${figure(gridVolts, 'V')} (at ${markedMainsVolts} V ${mains})`]),
    ...(cathodeOhms === undefined ? [] : [`a cathode resistor of ${resistanceText(cathodeOhms)}`]),
    ...(wallVolts === undefined ? [] : [`${figure(wallVolts, 'V')} at the wall`]),
    ...(rectifier === undefined
      ? []
      : [rectifier === SOLID_STATE ? 'silicon for the rectifier' : `${rectifier} as rectifier`]),
    ...(pulled === undefined ? [] : [`${pulled} pulled`]),
  ]
  return parts.length === 0 ? '' : `Then: with ${parts.join('; ')}.`
}
