/** The operating point of an output stage, as amounts. Voltages against chassis unless they say "to cathode". */
import { CURVE_NUMBERS } from '@/lib/domain/model/plate-curves'
import {
  type Amps,
  amps,
  type Ratio,
  ratio,
  type Siemens,
  siemens,
  type Volts,
  volts,
  type Watts,
  watts,
} from '@/lib/domain/units'
import type { OutputStage, PrimarySide } from './output-stage'
import { at } from './solver/dense-lu'
import type { Wiring } from './solver/wiring'

export type TubeIdle = {
  readonly socket: string
  readonly plate: Volts
  /** Of a triode: what its screen pin would stand at; no current flows. */
  readonly screen: Volts
  readonly cathode: Volts
  readonly grid: Volts
  readonly plateToCathode: Volts
  readonly screenToCathode: Volts
  readonly gridToCathode: Volts
  readonly plateCurrent: Amps
  readonly screenCurrent: Amps
  readonly cathodeCurrent: Amps
  readonly plateDissipation: Watts
  readonly screenDissipation: Watts
  /** Plate current by grid, the other electrodes held. */
  readonly transconductance: Siemens
  /** Plate current by plate, 1/rp. */
  readonly plateConductance: Siemens
}

export type SideIdle = { readonly plate: Volts; readonly current: Amps }
export type BiasResistorIdle = {
  readonly id: string
  readonly voltage: Volts
  readonly current: Amps
  readonly dissipation: Watts
}

export type SolutionCaution =
  /** A grid at or above its cathode draws current, which the equations leave out. */
  | { readonly code: 'grid-not-negative'; readonly socket: string; readonly gridToCathodeVolts: number }
  /** Below the knee the equations are an order of magnitude only. */
  | { readonly code: 'plate-below-knee'; readonly socket: string; readonly plateToCathodeVolts: number }
  /** Heaters follow the mains; ± 10 % is the usual tolerance of an oxide cathode (common practice, no source). */
  | { readonly code: 'heaters-off-nominal'; readonly percent: number }

export type IdleSolution = {
  /** In the order of the stage's tubes. */
  readonly tubes: readonly TubeIdle[]
  readonly reservoir: Volts
  /** Null where the screens hang on the primary or on the plates. */
  readonly screenNode: Volts | null
  readonly supplyCurrent: Amps
  readonly rectifierDrop: Volts
  /** Plate currents only; null: no tube on that side. */
  readonly sides: Readonly<Record<PrimarySide, SideIdle | null>>
  /** Those that a tube returns to, in the order of the stage. */
  readonly biasResistors: readonly BiasResistorIdle[]
  /** Of any node, as a share of its largest current. */
  readonly worstImbalance: Ratio
  readonly steps: number
  /** Newton alone did not arrive and the tubes' strength was stepped up. */
  readonly stepped: boolean
  readonly cautions: readonly SolutionCaution[]
}

export const KNEE_VOLTS = 30
const HEATER_TOLERANCE = 0.1

function tubeIdle(wiring: Wiring, socket: string, i: number): TubeIdle {
  const cathode = at(wiring.cathode, i)
  const plate = at(wiring.plateNode, wiring.side[i] as number)
  const screen = at(wiring.screen, i)
  const grid = at(wiring.grid, i)
  const plateCurrent = at(wiring.currents, 2 * i)
  const screenCurrent = at(wiring.currents, 2 * i + 1)
  return {
    socket,
    plate: volts(plate),
    screen: volts(screen),
    cathode: volts(cathode),
    grid: volts(grid),
    plateToCathode: volts(plate - cathode),
    screenToCathode: volts(screen - cathode),
    gridToCathode: volts(grid - cathode),
    plateCurrent: amps(plateCurrent),
    screenCurrent: amps(screenCurrent),
    cathodeCurrent: amps(plateCurrent + screenCurrent),
    plateDissipation: watts((plate - cathode) * plateCurrent),
    screenDissipation: watts((screen - cathode) * screenCurrent),
    transconductance: siemens(at(wiring.curves, i * CURVE_NUMBERS + 3)),
    plateConductance: siemens(at(wiring.curves, i * CURVE_NUMBERS + 1)),
  }
}

function sideIdle(wiring: Wiring, side: number): SideIdle | null {
  let current = 0
  let fitted = false
  for (let i = 0; i < wiring.count; i++) {
    if (wiring.side[i] !== side) continue
    fitted = true
    current += at(wiring.currents, 2 * i)
  }
  return fitted ? { plate: volts(at(wiring.plateNode, side)), current: amps(current) } : null
}

function biasResistorsIdle(wiring: Wiring, stage: OutputStage): BiasResistorIdle[] {
  const list: BiasResistorIdle[] = []
  for (const { id } of stage.biasResistors) {
    const first = stage.tubes.findIndex((tube) => tube.biasResistor === id)
    if (first < 0) continue
    let current = 0
    for (let i = 0; i < wiring.count; i++) {
      if (wiring.group[i] === wiring.group[first])
        current += at(wiring.currents, 2 * i) + at(wiring.currents, 2 * i + 1)
    }
    const voltage = at(wiring.groupNode, wiring.group[first] as number)
    list.push({ id, voltage: volts(voltage), current: amps(current), dissipation: watts(voltage * current) })
  }
  return list
}

function cautionsOf(tubes: readonly TubeIdle[], mainsFactor: number): SolutionCaution[] {
  const list: SolutionCaution[] = []
  for (const { socket, gridToCathode, plateToCathode } of tubes) {
    if (gridToCathode >= 0) list.push({ code: 'grid-not-negative', socket, gridToCathodeVolts: gridToCathode })
    if (plateToCathode < KNEE_VOLTS)
      list.push({ code: 'plate-below-knee', socket, plateToCathodeVolts: plateToCathode })
  }
  const off = mainsFactor - 1
  // A factor typed as 1.1 is at the tolerance, not past it, whatever its last bit.
  if (Math.abs(off) > HEATER_TOLERANCE + 1e-9) list.push({ code: 'heaters-off-nominal', percent: 100 * off })
  return list
}

export function idleSolution(
  wiring: Wiring,
  stage: OutputStage,
  search: { readonly steps: number; readonly stepped: boolean },
  imbalance: number,
): IdleSolution {
  const tubes: TubeIdle[] = []
  for (let i = 0; i < wiring.count; i++) tubes.push(tubeIdle(wiring, stage.tubes[i]?.socket ?? '', i))
  return {
    tubes,
    reservoir: volts(wiring.reservoir),
    screenNode: wiring.feed === 'primary-tap' ? null : volts(wiring.screenNode),
    supplyCurrent: amps(wiring.supplyCurrent),
    rectifierDrop: volts(wiring.rectifierDrop),
    sides: { a: sideIdle(wiring, 0), b: sideIdle(wiring, 1) },
    biasResistors: stage.biasResistors.length === 0 ? [] : biasResistorsIdle(wiring, stage),
    worstImbalance: ratio(imbalance),
    steps: search.steps,
    stepped: search.stepped,
    cautions: cautionsOf(tubes, stage.mainsFactor),
  }
}
