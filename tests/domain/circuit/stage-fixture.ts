/**
 * Invented stages with defaults and overrides. The tube parameters are round numbers of
 * the size of a large beam tetrode, a small triode and so on; they stand for no type.
 */
import type { OutputStage, OutputTube } from '@/lib/domain/circuit/output-stage'
import type { DiodeParameters, PentodeParameters, TriodeParameters } from '@/lib/domain/model/plate-curves'
import { amps, ohms, ratio, volts } from '@/lib/domain/units'

export const beam: PentodeParameters = { kind: 'pentode', p: 0.0009, mu: 8.5, muA: 180, r: 0.08, kp: 40 }
export const powerTriode: TriodeParameters = { kind: 'triode', mu: 4.2, x: 1.4, kg: 1500, kp: 60, kvb: 300 }
export const softRectifier: DiodeParameters = { kind: 'diode', k: 0.000269 }
export const stiffRectifier: DiodeParameters = { kind: 'diode', k: 0.00321 }

export const tubeIn = (socket: string, given: Partial<OutputTube> = {}): OutputTube => ({
  socket,
  tube: beam,
  side: 'a',
  gridSupply: 'bias',
  gridLeak: ohms(220_000),
  reverseGridCurrent: amps(0),
  screenResistance: ohms(470),
  senseResistance: ohms(1),
  biasResistor: null,
  ...given,
})

/** Four tubes, grid-supplied, two a side, 450 V. */
export const gridSupplied = (given: Partial<OutputStage> = {}): OutputStage => ({
  tubes: [tubeIn('V1'), tubeIn('V2'), tubeIn('V3', { side: 'b' }), tubeIn('V4', { side: 'b' })],
  gridSupplies: [{ id: 'bias', voltage: volts(-48), range: { lowest: volts(-60), highest: volts(-38) } }],
  biasResistors: [],
  halfPrimary: { a: ohms(41), b: ohms(44) },
  screenFeed: { kind: 'dropper', resistance: ohms(1000), drawn: amps(0.015) },
  supply: { openCircuit: volts(465), sourceResistance: ohms(80), rectifier: null, drawn: amps(0) },
  mainsFactor: ratio(1),
  ...given,
})

/** Two tubes on one bias resistor, rectifier tube. */
export const cathodeBiased = (given: Partial<OutputStage> = {}): OutputStage => {
  const hung = { gridSupply: null, biasResistor: 'Rk', senseResistance: ohms(0) }
  return {
    tubes: [tubeIn('V1', hung), tubeIn('V2', { ...hung, side: 'b' })],
    gridSupplies: [],
    biasResistors: [{ id: 'Rk', resistance: ohms(250) }],
    halfPrimary: { a: ohms(120), b: ohms(130) },
    screenFeed: { kind: 'dropper', resistance: ohms(4700), drawn: amps(0.008) },
    supply: { openCircuit: volts(430), sourceResistance: ohms(120), rectifier: softRectifier, drawn: amps(0) },
    mainsFactor: ratio(1),
    ...given,
  }
}
