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

export type CohortFacts = {
  /** Compared by what they would do in the amplifier: test point and instrument are then those of the first. */
  readonly predicted: boolean
  readonly instrument: string
  readonly testPoint: TestPoint
  readonly measured: boolean
  /** null where designations are mixed. */
  readonly designation: string | null
}

export type Cohort = CohortFacts & { readonly members: readonly TestedCandidate[] }

/** Tubes alike in all that a cohort looks at, by numbers that rise with their marks; `tube` is the first of them. */
export type Alike = { readonly tube: TestedCandidate; readonly numbers: Numbers }

/** `numbers`: in the order of members; marks rise within one and the same test point. */
export type CohortOfAlike = { readonly facts: CohortFacts; readonly numbers: Numbers }

export type Numbers = Int32Array | readonly number[]

export type CohortRule = { readonly predicted: boolean; readonly oneDesignation: boolean }

export function cohorts(tubes: readonly TestedCandidate[], oneDesignation: boolean): Cohort[] {
  return ofTubes(tubes, { predicted: false, oneDesignation })
}

/** Predicted figures compare wherever and on whatever the tubes were tested: their bands carry that doubt. */
export function predictedCohorts(tubes: readonly TestedCandidate[], oneDesignation: boolean): Cohort[] {
  return ofTubes(tubes, { predicted: true, oneDesignation })
}

function ofTubes(tubes: readonly TestedCandidate[], rule: CohortRule): Cohort[] {
  const each = tubes.map((tube, number): Alike => ({ tube, numbers: [number] }))
  return cohortsOfAlike(each, rule).map(({ facts, numbers }) => ({
    ...facts,
    members: Array.from(numbers, (number) => tubes[number] as TestedCandidate),
  }))
}

/** In the order in which their first tubes come. */
export function cohortsOfAlike(all: readonly Alike[], { predicted, oneDesignation }: CohortRule): CohortOfAlike[] {
  if (predicted) {
    return groupBy(all, ({ tube }) => (oneDesignation ? tube.designation : '')).map((those) => {
      const { tube, numbers } = merged(those)
      const facts = { ...factsOf(tube, tube.test.testPoint, oneDesignation), predicted: true, measured: true }
      return { facts, numbers }
    })
  }
  const kinds = groupBy(all, ({ tube: { designation, test } }) =>
    JSON.stringify([
      instrumentKey(test.instrument),
      test.transconductance !== null,
      oneDesignation ? designation : null,
    ]),
  )
  return kinds.flatMap((those) =>
    byTestPoint(those).map(({ point, tube, numbers }) => ({ facts: factsOf(tube, point, oneDesignation), numbers })),
  )
}

/** Case and spacing of a name do not make another instrument. */
export const instrumentKey = (name: string): string => name.trim().replace(/\s+/g, ' ').toLowerCase()

type AtPoint = Alike & { readonly point: TestPoint }

function factsOf({ test, designation }: TestedCandidate, point: TestPoint, oneDesignation: boolean): CohortFacts {
  return {
    predicted: false,
    instrument: test.instrument.trim(),
    testPoint: point,
    measured: test.transconductance !== null,
    designation: oneDesignation ? designation : null,
  }
}

function byTestPoint(all: readonly Alike[]): AtPoint[] {
  const exact = groupBy(all, ({ tube }) => pointKey(tube.test.testPoint)).map((those): AtPoint => {
    const alike = merged(those)
    return { ...alike, point: alike.tube.test.testPoint }
  })
  let waiting = exact.sort((a, b) => b.numbers.length - a.numbers.length || comparePoints(a.point, b.point))
  const groups: AtPoint[] = []
  while (waiting.length > 0) {
    const { point, tube } = waiting[0] as AtPoint
    const near = waiting.filter((each) => samePoint(each.point, point))
    groups.push({ point, tube, numbers: joined(near) })
    waiting = waiting.filter((each) => !near.includes(each))
  }
  return groups
}

/** As if they had been given one by one. */
function merged(those: readonly Alike[]): Alike {
  const [first] = those as readonly [Alike]
  if (those.length === 1) return first
  return { tube: first.tube, numbers: joined(those).sort() }
}

function joined(those: readonly Alike[]): Int32Array {
  const all = new Int32Array(those.reduce((size, { numbers }) => size + numbers.length, 0))
  let to = 0
  for (const { numbers } of those) {
    all.set(numbers, to)
    to += numbers.length
  }
  return all
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

const pointKey = (point: TestPoint): string => pointSteps(point).join('/')

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
