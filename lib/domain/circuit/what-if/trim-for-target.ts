/**
 * The adjustment that brings a stage to its idle target: grid volts, or the bias resistor.
 *
 * Every setting tried is solved anew, so the supply's sag, the screens and the shared
 * resistors answer as they would. Where several tubes hang on one adjustment the hottest
 * of them can be held to the target. With several settings that reach it the coldest is taken.
 */

import type { IdleSolution, TubeIdle } from '@/lib/domain/circuit/idle-solution'
import type { GridSupply, OutputStage, OutputTube } from '@/lib/domain/circuit/output-stage'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import { fail, ok, type Result } from '@/lib/domain/result'
import { type Ohms, ohms, type Volts, volts } from '@/lib/domain/units'
import { coldestCrossing, type OutOfReach } from './coldest-crossing'
import { e24Around } from './e24'

export type TrimTarget = {
  /** Tube dissipation: plate and screen together, for screens strapped to their plates. */
  readonly quantity: 'plate-current' | 'plate-dissipation' | 'tube-dissipation'
  /** A or W. */
  readonly value: number
  /** A socket, or the hottest of those that hang on the adjustment. */
  readonly of: string | 'hottest'
}

export type TrimFault =
  | SolveFault
  /** Even the hottest setting stays below the target: amperes or watts, as the target is. */
  | { readonly code: 'target-out-of-reach'; readonly target: number; readonly most: number; readonly unit: 'A' | 'W' }
  | { readonly code: 'nothing-to-trim'; readonly part: string }
  | { readonly code: 'target-not-positive'; readonly value: number }

export type Setting<Q> = { readonly setting: Q; readonly reached: number; readonly solution: IdleSolution }

export type GridTrim = Setting<Volts> & {
  /** Null: the amp's range is not known, or there is no adjustment. */
  readonly withinRange: boolean | null
  /** What the end of the range nearest to the setting gives; null unless the range falls short. */
  readonly nearestInRange: Setting<Volts> | null
}

export type ResistorTrim = {
  /** The value that meets the target; no such part is sold. */
  readonly exact: Setting<Ohms>
  /** Next value up of E24: less current. */
  readonly cooler: Setting<Ohms>
  /** Next value down of E24: more current. */
  readonly hotter: Setting<Ohms>
}

/** Ω. From a sense resistor up to a tube all but cut off. */
const RESISTOR_SEARCH = { least: 1, most: 1e6 } as const

type Trial = (setting: number) => Result<IdleSolution, SolveFault>

function measured({ plateCurrent, plateDissipation, screenDissipation }: TubeIdle, { quantity }: TrimTarget): number {
  if (quantity === 'plate-current') return plateCurrent
  return quantity === 'plate-dissipation' ? plateDissipation : plateDissipation + screenDissipation
}

function reachedBy(solution: IdleSolution, target: TrimTarget, hung: ReadonlySet<string>): number {
  const counted = solution.tubes.filter(({ socket }) =>
    target.of === 'hottest' ? hung.has(socket) : socket === target.of,
  )
  return Math.max(...counted.map((tube) => measured(tube, target)))
}

function targetFault(
  stage: OutputStage,
  part: string,
  hung: readonly OutputTube[],
  target: TrimTarget,
): TrimFault | null {
  if (!(target.value > 0)) return { code: 'target-not-positive', value: target.value }
  if (target.of !== 'hottest' && !stage.tubes.some(({ socket }) => socket === target.of)) {
    return { code: 'unknown-socket', socket: target.of }
  }
  return hung.length === 0 ? { code: 'nothing-to-trim', part } : null
}

const faultOf = (fault: SolveFault | OutOfReach, { quantity, value }: TrimTarget): TrimFault =>
  fault.code === 'out-of-reach'
    ? { code: 'target-out-of-reach', target: value, most: fault.most, unit: quantity === 'plate-current' ? 'A' : 'W' }
    : fault

/** The search itself, over a scale on which a larger number is hotter. */
function search(trial: Trial, cold: number, hot: number, target: TrimTarget, hung: ReadonlySet<string>) {
  const measure = (setting: number) => {
    const solved = trial(setting)
    return solved.ok ? ok(reachedBy(solved.value, target, hung)) : solved
  }
  const found = coldestCrossing(measure, target.value, cold, hot)
  return found.ok ? found : fail(faultOf(found.fault, target))
}

function settingAt<Q>(trial: Trial, at: number, setting: Q, target: TrimTarget, hung: ReadonlySet<string>) {
  const solved = trial(at)
  if (!solved.ok) return solved
  return ok<Setting<Q>>({ setting, reached: reachedBy(solved.value, target, hung), solution: solved.value })
}

function nearestEnd({ range }: GridSupply, setting: number): Volts | null {
  if (range === null || (setting >= range.lowest && setting <= range.highest)) return null
  return setting < range.lowest ? range.lowest : range.highest
}

/** Grid volts of one supply, at nominal mains as the stage gives them; from half the supply voltage below chassis up to 0 V. */
export function trimGridSupply(stage: OutputStage, id: string, target: TrimTarget): Result<GridTrim, TrimFault> {
  const hungTubes = stage.tubes.filter(({ gridSupply }) => gridSupply === id)
  const fault = targetFault(stage, id, hungTubes, target)
  const supply = stage.gridSupplies.find((one) => one.id === id)
  if (fault || !supply) return fail(fault ?? { code: 'nothing-to-trim', part: id })
  const hung = new Set(hungTubes.map(({ socket }) => socket))
  const trial: Trial = (voltage) =>
    solveIdle({
      ...stage,
      gridSupplies: stage.gridSupplies.map((one) => (one.id === id ? { ...one, voltage: volts(voltage) } : one)),
    })
  const found = search(trial, -stage.supply.openCircuit / 2, 0, target, hung)
  if (!found.ok) return found
  const exact = settingAt(trial, found.value, volts(found.value), target, hung)
  if (!exact.ok) return exact
  const end = nearestEnd(supply, found.value)
  if (end === null) return ok({ ...exact.value, withinRange: supply.range && true, nearestInRange: null })
  const nearest = settingAt(trial, end, end, target, hung)
  return nearest.ok ? ok({ ...exact.value, withinRange: false, nearestInRange: nearest.value }) : nearest
}

/** A bias resistor, exact and from the E24 series. */
export function trimBiasResistor(stage: OutputStage, id: string, target: TrimTarget): Result<ResistorTrim, TrimFault> {
  const hungTubes = stage.tubes.filter(({ biasResistor }) => biasResistor === id)
  const fault = targetFault(stage, id, hungTubes, target)
  if (fault) return fail(fault)
  const hung = new Set(hungTubes.map(({ socket }) => socket))
  const withResistor: Trial = (resistance) =>
    solveIdle({
      ...stage,
      biasResistors: stage.biasResistors.map((one) => (one.id === id ? { id, resistance: ohms(resistance) } : one)),
    })
  // Hotter is less resistance, decade by decade.
  const trial: Trial = (logarithm) => withResistor(10 ** -logarithm)
  const found = search(trial, -Math.log10(RESISTOR_SEARCH.most), -Math.log10(RESISTOR_SEARCH.least), target, hung)
  if (!found.ok) return found
  const resistance = ohms(10 ** -found.value)
  const { below, above } = e24Around(resistance)
  const exact = settingAt(withResistor, resistance, resistance, target, hung)
  const cooler = settingAt(withResistor, above, above, target, hung)
  const hotter = settingAt(withResistor, below, below, target, hung)
  if (!exact.ok) return exact
  if (!cooler.ok) return cooler
  return hotter.ok ? ok({ exact: exact.value, cooler: cooler.value, hotter: hotter.value }) : hotter
}
