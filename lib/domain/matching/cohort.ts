/**
 * Tubes whose readings may be compared: the same instrument, the same test
 * point within the stated tolerance, transconductance measured on all or on
 * none, and one designation where the shop asks for it.
 *
 * "Within the tolerance" does not carry over from tube to tube, so the point
 * used by most tubes becomes nominal first and draws in all that lie within
 * the tolerance of it; the rest follow in the same way. Each tube is in exactly
 * one cohort. Ties between points go to the lower plate, screen, grid voltage.
 * Predicted figures know no such limits (`predictedCohorts`).
 */
import type { Volts } from '../units'
import type { TestPoint } from './candidate'
import { TEST_POINT_TOLERANCE } from './match-limits'
import type { TestedCandidate } from './proposal'

export type Cohort = {
  /** Compared by what they would do in the amplifier: test point and instrument are then those of the first. */
  readonly predicted: boolean
  readonly instrument: string
  readonly testPoint: TestPoint
  readonly measured: boolean
  /** null where designations are mixed. */
  readonly designation: string | null
  readonly members: readonly TestedCandidate[]
}

export function cohorts(tubes: readonly TestedCandidate[], oneDesignation: boolean): Cohort[] {
  const kinds = groupBy(tubes, ({ designation, test }) =>
    JSON.stringify([
      instrumentKey(test.instrument),
      test.transconductance !== null,
      oneDesignation ? designation : null,
    ]),
  )
  return kinds.flatMap((alike) => byTestPoint(alike).map((group) => cohort(group, oneDesignation)))
}

/** Predicted figures compare wherever and on whatever the tubes were tested: their bands carry that doubt. */
export function predictedCohorts(tubes: readonly TestedCandidate[], oneDesignation: boolean): Cohort[] {
  return groupBy(tubes, ({ designation }) => (oneDesignation ? designation : '')).map((members) => {
    const { test } = members[0] as TestedCandidate
    return {
      ...cohort({ point: test.testPoint, members }, oneDesignation),
      predicted: true,
      measured: true,
    }
  })
}

/** Case and spacing of a name do not make another instrument. */
export const instrumentKey = (name: string): string => name.trim().replace(/\s+/g, ' ').toLowerCase()

type AtPoint = { readonly point: TestPoint; readonly members: readonly TestedCandidate[] }

function cohort({ point, members }: AtPoint, oneDesignation: boolean): Cohort {
  const first = members[0] as TestedCandidate
  return {
    predicted: false,
    instrument: first.test.instrument.trim(),
    testPoint: point,
    measured: first.test.transconductance !== null,
    designation: oneDesignation ? first.designation : null,
    members,
  }
}

function byTestPoint(tubes: readonly TestedCandidate[]): AtPoint[] {
  const exact = groupBy(tubes, ({ test }) => pointSteps(test.testPoint).join('/')).map((members) => ({
    point: (members[0] as TestedCandidate).test.testPoint,
    members,
  }))
  let waiting = exact.sort((a, b) => b.members.length - a.members.length || comparePoints(a.point, b.point))
  const groups: AtPoint[] = []
  while (waiting.length > 0) {
    const { point } = waiting[0] as AtPoint
    const near = waiting.filter((each) => samePoint(each.point, point))
    groups.push({ point, members: near.flatMap((each) => each.members) })
    waiting = waiting.filter((each) => !near.includes(each))
  }
  return groups
}

export function samePoint(a: TestPoint, b: TestPoint): boolean {
  if (a.screenVoltage === null || b.screenVoltage === null) {
    if (a.screenVoltage !== b.screenVoltage) return false
  } else if (!near(a.screenVoltage, b.screenVoltage, TEST_POINT_TOLERANCE.screenVoltage)) return false
  return (
    near(a.plateVoltage, b.plateVoltage, TEST_POINT_TOLERANCE.plateVoltage) &&
    near(a.gridVoltage, b.gridVoltage, TEST_POINT_TOLERANCE.gridVoltage)
  )
}

const near = (a: Volts, b: Volts, tolerance: Volts): boolean =>
  Math.round(Math.abs(a - b) * 1000) <= Math.round(tolerance * 1000)

/** Millivolts, -1 for no screen. */
const pointSteps = ({ plateVoltage, screenVoltage, gridVoltage }: TestPoint): number[] =>
  [plateVoltage, screenVoltage ?? -0.001, gridVoltage].map((voltage) => Math.round(voltage * 1000))

function comparePoints(a: TestPoint, b: TestPoint): number {
  const [x, y] = [pointSteps(a), pointSteps(b)]
  return x.map((step, place) => step - (y[place] as number)).find((difference) => difference !== 0) ?? 0
}

function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): T[][] {
  const groups = new Map<string, T[]>()
  for (const item of items) {
    const key = keyOf(item)
    const group = groups.get(key)
    if (group) group.push(item)
    else groups.set(key, [item])
  }
  return [...groups.values()]
}
