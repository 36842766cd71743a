/** A stock made into pairs or quads: the sets with what they spread, what stays single, and what to test next. */
import type { TestPoint } from '@/lib/domain/matching/candidate'
import { acrossCorrections } from '@/lib/domain/matching/doubt-of-difference'
import type { Spreads } from '@/lib/domain/matching/proposal'
import { type Money, money } from '@/lib/domain/money'
import type { ReadTube, SpreadRule } from '@/lib/domain/pairing/spread-rule'
import { type Amps, amps, ratio } from '@/lib/domain/units'
import type { StockCohort, StockTube, UnreadTube } from './stock-cohorts'

export type SetSize = 2 | 4

export type SetsOrder = {
  readonly size: SetSize
  readonly cohort: StockCohort
  readonly rule: SpreadRule
  /** ISO date. */
  readonly asOf: string
  /** For quads; pairs end by themselves. */
  readonly seconds: number
}

export type StockSet = {
  readonly tubes: readonly StockTube[]
  readonly spreads: Spreads
  readonly price: Money
  /** Half of the 95 % band of a difference of plate currents within it. Left out: all were read, or carried, alike. */
  readonly doubt?: Amps
}

export type TestNext = UnreadTube & {
  /** Marks of singles that its old reading lies near; empty: nothing is known of it. */
  readonly near: readonly string[]
}

export type SetsPlan = {
  readonly order: Pick<SetsOrder, 'size' | 'rule' | 'asOf'>
  readonly family: string
  readonly instrument: string
  readonly testPoint: TestPoint
  readonly measured: boolean
  readonly tubes: number
  readonly sets: readonly StockSet[]
  readonly singles: readonly StockTube[]
  readonly testNext: readonly TestNext[]
  /** Steps of lib/domain/pairing/spread-rule.ts: spreads of all sets and what each single is charged. */
  readonly cost: number
  /** No way of making sets costs less. */
  readonly bound: number
  readonly ended: 'optimal' | 'time' | 'cancelled'
}

type Found = Pick<SetsPlan, 'cost' | 'bound' | 'ended'> & {
  readonly sets: readonly (readonly StockTube[])[]
  readonly singles: readonly StockTube[]
}

export function setsPlan({ size, cohort, rule, asOf }: SetsOrder, found: Found): SetsPlan {
  const { family, instrument, testPoint, measured, tubes, unread } = cohort
  const { cost, bound, ended, singles } = found
  return {
    order: { size, rule, asOf },
    ...{ family, instrument, testPoint, measured, cost, bound, ended, singles },
    tubes: tubes.length,
    sets: found.sets.map((set) => stockSet(set)),
    testNext: testNext(singles, unread, rule),
  }
}

export function stockSet(tubes: readonly StockTube[]): StockSet {
  const currents = tubes.map(({ plateCurrent }) => Math.round(1e6 * plateCurrent))
  const slopes = tubes.flatMap(({ transconductance }) => transconductance ?? [])
  return {
    tubes,
    spreads: {
      plateCurrent: amps((Math.max(...currents) - Math.min(...currents)) / 1e6),
      transconductance: slopes.length === tubes.length ? ratio(Math.max(...slopes) / Math.min(...slopes) - 1) : null,
    },
    price: money(tubes.reduce((sum, { price }) => sum + price, 0)),
    ...doubtOf(tubes),
  }
}

function doubtOf(tubes: readonly StockTube[]): Pick<StockSet, 'doubt'> {
  const doubt = acrossCorrections(tubes, ({ carried, plateCurrent }) => (carried?.current.share ?? 0) * plateCurrent)
  return doubt > 0 ? { doubt: amps(doubt) } : {}
}

/** Those first whose old reading lies within the yardsticks of a single; of the others nothing can be said. */
export function testNext(singles: readonly ReadTube[], unread: readonly UnreadTube[], rule: SpreadRule): TestNext[] {
  if (singles.length === 0) return []
  const all = unread.map((each): TestNext => {
    const { oldReading } = each
    const near = oldReading ? singles.filter((single) => isNear(single, oldReading, rule)) : []
    return { ...each, near: near.map(({ mark }) => mark) }
  })
  return all.sort((a, b) => Math.sign(b.near.length) - Math.sign(a.near.length))
}

function isNear(a: ReadTube, b: ReadTube, { yardsticks }: SpreadRule): boolean {
  if (Math.abs(a.plateCurrent - b.plateCurrent) > yardsticks.plateCurrent) return false
  if (a.transconductance === null || b.transconductance === null) return true
  const [low, high] = [a.transconductance, b.transconductance].sort((x, y) => x - y)
  return (high ?? 0) <= (low ?? 0) * (1 + yardsticks.transconductance)
}
