/**
 * The individual tube: from what a tester read to the tube's own parameters.
 *
 * A tube differs from its type by factors on P and µ (and on r, its screen share). They are
 * sought so that the curves give the readings at the test point: with plate current and
 * transconductance of one record, two equations for two unknowns, solved by Newton's
 * method on the logarithms. With more readings than unknowns the same steps minimise
 *   Σ ((ln model − ln reading) / u)²,   u = standard uncertainty / reading,
 * so records combine by their uncertainty. Covariance of the scales: (JᵀWJ)⁻¹.
 *
 * What no record tells is taken from the spread of tubes of one type, which is an
 * assumption (from memory, no source): ln P ± 0.10, ln µ ± 0.03, ln r ± 0.35 (Ig2 is
 * printed and met no better than that). So with plate current alone P takes the whole
 * difference and the uncertainty of µ stays.
 *
 * Valid where the test point conducts: near cutoff Ia and gm say the same thing and the
 * covariance grows without bound; past it the record is refused.
 */
import { fail, ok, type Result } from '../result'
import type { Amps, Siemens, Volts } from '../units'
import type { AmplifyingParameters } from './plate-curves'
import { bilinear, inverse, type Matrix, solve } from './small-matrix'
import { AS_TYPE, gmAt, type LoggedPoint, type LogScales, loggedPoint, SCALES, scaledTube } from './tube-scales'
import type { TypeModel } from './type-model'

export type Measured<Unit extends number> = {
  readonly value: Unit
  /** Standard uncertainty, same unit, above zero. */
  readonly standard: number
}

/** Electrodes against the cathode. A triode ignores the screen. */
export type TestPoint = {
  readonly plateToCathode: Volts
  readonly screenToCathode: Volts
  readonly gridToCathode: Volts
}

export type TestRecord = {
  readonly point: TestPoint
  readonly plateCurrent: Measured<Amps>
  readonly transconductance: Measured<Siemens> | null
  readonly screenCurrent: Measured<Amps> | null
}

export type IndividualTube = {
  readonly type: TypeModel
  readonly parameters: AmplifyingParameters
  readonly scales: LogScales
  /** Of the scales, 3 × 3. */
  readonly covariance: Matrix
  /** What the scales rest on. 'type': no record, the handbook's average tube. */
  readonly basis: 'current-and-transconductance' | 'current-only' | 'type'
  readonly testPoints: readonly TestPoint[]
  /** Where readings outnumber unknowns: far above `spare` means that the records disagree. */
  readonly agreement: { readonly chiSquare: number; readonly spare: number } | null
}

export type IndividualFault =
  | 'no-record'
  /** A reading or its uncertainty is not above zero. */
  | 'reading-not-positive'
  /** The type carries next to no current at the test point. */
  | 'test-point-cut-off'
  /** The readings cannot tell P from µ: a test point close to cutoff. */
  | 'readings-not-distinct'
  /** More than a factor four from the type, or no solution: wrong type, wrong point or wrong reading. */
  | 'unlike-the-type'

const SPREAD: LogScales = [0.1, 0.03, 0.35]
const LEAST_CURRENT = 1e-6
const WIDEST_SCALE = Math.log(4)
const LONGEST_STEP = 0.3
const STEPS = 80
const SETTLED = 1e-11
const NUDGE = 1e-4

type Equation = { readonly misfit: number; readonly slopes: LogScales; readonly share: number }

/** No record at all: the average tube with the spread of its type. */
export function untestedTube(type: TypeModel): IndividualTube {
  return {
    type,
    parameters: type.parameters,
    scales: AS_TYPE,
    covariance: SPREAD.map((one, i) => SPREAD.map((_, j) => (i === j ? one * one : 0))),
    basis: 'type',
    testPoints: [],
    agreement: null,
  }
}

/** P and r act on gm as on the current; the slope by µ is a central difference. */
function gmSlopes(tube: AmplifyingParameters, here: LoggedPoint, point: TestPoint): LogScales {
  const up = gmAt({ ...tube, mu: tube.mu * (1 + NUDGE) }, point)
  const down = gmAt({ ...tube, mu: tube.mu * (1 - NUDGE) }, point)
  return [1, Math.log(up / down) / (2 * NUDGE), here.plateSlopes[2]]
}

const equation = (model: number, reading: Measured<number>, slopes: LogScales): Equation => ({
  misfit: Math.log(reading.value / model),
  slopes,
  share: reading.standard / reading.value,
})

function recordEquations(type: AmplifyingParameters, scales: LogScales, record: TestRecord): Equation[] {
  const tube = scaledTube(type, scales)
  const here = loggedPoint(tube, record.point)
  const equations = [equation(here.plate, record.plateCurrent, here.plateSlopes)]
  if (record.transconductance)
    equations.push(equation(here.gm, record.transconductance, gmSlopes(tube, here, record.point)))
  if (record.screenCurrent && type.kind === 'pentode')
    equations.push(equation(here.screen, record.screenCurrent, here.screenSlopes))
  return equations
}

/** Which scales no reading speaks of and the spread of the type must stand for. */
function assumed(type: AmplifyingParameters, records: readonly TestRecord[]): readonly number[] {
  const indices: number[] = []
  if (records.every((record) => record.transconductance === null)) indices.push(1)
  if (type.kind === 'triode' || records.every((record) => record.screenCurrent === null)) indices.push(2)
  return indices
}

function assumption(scales: LogScales, index: number): Equation {
  const slopes: LogScales = [index === 0 ? 1 : 0, index === 1 ? 1 : 0, index === 2 ? 1 : 0]
  return { misfit: -(scales[index] ?? 0), slopes, share: SPREAD[index] ?? 1 }
}

type Normal = { readonly matrix: Matrix; readonly right: readonly number[]; readonly chiSquare: number }

function normalEquations(equations: readonly Equation[]): Normal {
  const matrix = Array.from({ length: SCALES }, () => new Array<number>(SCALES).fill(0))
  const right = new Array<number>(SCALES).fill(0)
  let chiSquare = 0
  for (const { misfit, slopes, share } of equations) {
    const weight = 1 / (share * share)
    chiSquare += misfit * misfit * weight
    for (const [i, row] of matrix.entries()) {
      right[i] = (right[i] ?? 0) + (slopes[i] ?? 0) * misfit * weight
      for (let j = 0; j < SCALES; j++) row[j] = (row[j] ?? 0) + (slopes[i] ?? 0) * (slopes[j] ?? 0) * weight
    }
  }
  return { matrix, right, chiSquare }
}

/** No scale moves by more than a third at a time, so that a far first step cannot leave the conducting region. */
function stepped(scales: LogScales, step: readonly number[]): { readonly scales: LogScales; readonly length: number } {
  const length = Math.max(...step.map(Math.abs))
  const damp = length > LONGEST_STEP ? LONGEST_STEP / length : 1
  const [p, mu, r] = scales.map((one, i) => one + damp * (step[i] ?? 0))
  return { scales: [p ?? 0, mu ?? 0, r ?? 0], length }
}

const beyond = (scales: LogScales): boolean => scales.some((one) => !(Math.abs(one) <= 2 * WIDEST_SCALE))

function settle(type: AmplifyingParameters, records: readonly TestRecord[]): Result<LogScales, IndividualFault> {
  let scales: LogScales = AS_TYPE
  for (let count = 0; count < STEPS; count++) {
    const { matrix, right } = normalEquations(allEquations(type, scales, records))
    const step = solve(matrix, right)
    if (!step) return fail('readings-not-distinct')
    const next = stepped(scales, step)
    scales = next.scales
    if (beyond(scales)) return fail('unlike-the-type')
    if (next.length < SETTLED) return ok(scales)
  }
  return fail('unlike-the-type')
}

function allEquations(type: AmplifyingParameters, scales: LogScales, records: readonly TestRecord[]): Equation[] {
  return [
    ...records.flatMap((record) => recordEquations(type, scales, record)),
    ...assumed(type, records).map((index) => assumption(scales, index)),
  ]
}

const positive = (one: Measured<number> | null): boolean =>
  one === null || (one.value > 0 && one.standard > 0 && Number.isFinite(one.value) && Number.isFinite(one.standard))

function refusal(type: AmplifyingParameters, records: readonly TestRecord[]): IndividualFault | null {
  if (records.length === 0) return 'no-record'
  const readings = records.flatMap((one) => [one.plateCurrent, one.transconductance, one.screenCurrent])
  if (!readings.every(positive)) return 'reading-not-positive'
  if (records.some((one) => loggedPoint(type, one.point).plate < LEAST_CURRENT)) return 'test-point-cut-off'
  return null
}

export function individualTube(
  type: TypeModel,
  records: readonly TestRecord[],
): Result<IndividualTube, IndividualFault> {
  const refused = refusal(type.parameters, records)
  if (refused) return fail(refused)
  const settled = settle(type.parameters, records)
  if (!settled.ok) return settled
  const scales = settled.value
  if (scales.some((one) => Math.abs(one) > WIDEST_SCALE)) return fail('unlike-the-type')
  const equations = allEquations(type.parameters, scales, records)
  const { matrix, chiSquare } = normalEquations(equations)
  const covariance = inverse(matrix)
  if (!covariance) return fail('readings-not-distinct')
  const spare = equations.length - SCALES
  return ok({
    type,
    parameters: scaledTube(type.parameters, scales),
    scales,
    covariance,
    basis: records.some((one) => one.transconductance) ? 'current-and-transconductance' : 'current-only',
    testPoints: records.map((one) => one.point),
    agreement: spare > 0 ? { chiSquare, spare } : null,
  })
}

/** Standard deviation of a logarithm whose slopes by the scales are given. */
export const scaleUncertainty = (tube: IndividualTube, slopes: LogScales): number =>
  Math.sqrt(Math.max(0, bilinear(slopes, tube.covariance, slopes)))
