/**
 * A stock as it can be made into sets for the shelf: tubes of one family and base that are free,
 * good and read alike (one instrument, one test point), and those that cannot be compared.
 */
import type { Candidate, CarriedReading, MatchLimits, SocketDemand, TestPoint } from '@/lib/domain/matching/candidate'
import { carriedCandidates } from '@/lib/domain/matching/carried-stock'
import { cohorts, instrumentKey, samePoint } from '@/lib/domain/matching/cohort'
import { exclusionReasons, isTested } from '@/lib/domain/matching/eligibility'
import { naturalOrder } from '@/lib/domain/matching/natural-order'
import { otherInstrument } from '@/lib/domain/matching/not-comparable'
import type { Exclusion, TestedCandidate } from '@/lib/domain/matching/proposal'
import type { Money } from '@/lib/domain/money'
import type { ReadTube } from '@/lib/domain/pairing/spread-rule'

export type StockTube = ReadTube & {
  readonly tubeId: string
  readonly designation: string
  readonly price: Money
  /** ISO date. */
  readonly testedAt: string
  /** Where its reading was carried over from. Left out: as read. */
  readonly carried?: CarriedReading
}

/** A tube whose reading cannot be held against those of a cohort. */
export type UnreadTube = Exclusion & {
  /** Read at the very point and on the very instrument, but too long ago. */
  readonly oldReading: ReadTube | null
}

export type StockCohort = {
  /** The same stock gives the same key, whatever the tubes of it read. */
  readonly key: string
  readonly family: string
  readonly instrument: string
  readonly testPoint: TestPoint
  /** False: transconductance was not read on these. */
  readonly measured: boolean
  /** In natural order of marks. */
  readonly tubes: readonly StockTube[]
  /** Of the same family and base. */
  readonly unread: readonly UnreadTube[]
}

export type StockLimits = Pick<
  MatchLimits,
  'maximumTestAgeDays' | 'oneDesignation' | 'yardsticks' | 'asOf' | 'carrying'
>

/** By family, then the larger first. A family without any reading stands with one empty cohort. */
export function stockCohorts(stock: readonly Candidate[], limits: StockLimits): StockCohort[] {
  const kinds = new Map<string, Candidate[]>()
  for (const tube of stock) {
    const key = JSON.stringify([tube.family, tube.base])
    kinds.set(key, [...(kinds.get(key) ?? []), tube])
  }
  return [...kinds.values()]
    .flatMap((tubes) => ofKind(tubes, limits))
    .sort((a, b) => naturalOrder(a.family, b.family) || b.tubes.length - a.tubes.length)
}

function ofKind(asRead: readonly Candidate[], limits: StockLimits): StockCohort[] {
  const stock = carriedCandidates(asRead, limits.carrying, 'same-point')
  const rules = { ...limits, allowOverPrintedRating: true, priceCap: null }
  const usable: TestedCandidate[] = []
  const excluded: Exclusion[] = []
  for (const candidate of [...stock].sort((a, b) => naturalOrder(a.mark, b.mark))) {
    const reasons = exclusionReasons(candidate, shelf(candidate), rules)
    if (reasons.length === 0 && isTested(candidate)) usable.push(candidate)
    else excluded.push({ candidate, reasons })
  }
  const untested = excluded.filter(({ reasons }) =>
    reasons.every(({ code }) => code === 'untested' || code === 'test-too-old'),
  )
  return cohorts(usable, limits.oneDesignation).map((cohort): StockCohort => {
    const { instrument, testPoint, measured, designation, members } = cohort
    const inside = new Set(members.map(({ tubeId }) => tubeId))
    const elsewhere = usable
      .filter(({ tubeId }) => !inside.has(tubeId))
      .map((tube) => elsewhereRead(tube, cohort, limits.carrying))
    return {
      key: JSON.stringify([
        members[0]?.family,
        members[0]?.base,
        instrumentKey(instrument),
        testPoint,
        measured,
        designation,
      ]),
      family: members[0]?.family ?? '',
      instrument,
      testPoint,
      measured,
      tubes: members.map(stockTube),
      unread: [
        ...untested.map((each) => ({ ...each, oldReading: oldReading(each.candidate, cohort) })),
        ...elsewhere.map((each) => ({ ...each, oldReading: null })),
      ],
    }
  })
}

/** Asks nothing of a tube but that it is good and free. */
const shelf = ({ family, base }: Candidate): SocketDemand => ({
  count: 1,
  family,
  base,
  pushPull: false,
  arrangement: 'one-trim',
  aim: null,
  plateToCathodeVoltage: null,
  screenVoltage: null,
  idlePlateDissipation: null,
})

const stockTube = ({ tubeId, mark, designation, price, test }: TestedCandidate): StockTube => ({
  tubeId,
  mark,
  designation,
  price,
  testedAt: test.testedAt,
  plateCurrent: test.plateCurrent,
  transconductance: test.transconductance,
  ...(test.carried ? { carried: test.carried } : {}),
})

type Like = { readonly instrument: string; readonly testPoint: TestPoint; readonly measured: boolean }

function elsewhereRead(candidate: TestedCandidate, like: Like, carrying: MatchLimits['carrying']): Exclusion {
  const { test } = candidate
  const { testPoint, measured } = like
  const reasons = otherInstrument({ ...test, measured: test.transconductance !== null }, like, carrying)
  if (reasons.length > 0) return { candidate, reasons }
  if (!samePoint(test.testPoint, testPoint))
    return { candidate, reasons: [{ code: 'other-test-point', testPoint: test.testPoint, setTestPoint: testPoint }] }
  return { candidate, reasons: [{ code: 'transconductance-differs', measured: !measured }] }
}

function oldReading({ mark, test }: Candidate, { instrument, testPoint, measured }: Like): ReadTube | null {
  if (!test || instrumentKey(test.instrument) !== instrumentKey(instrument)) return null
  if (!samePoint(test.testPoint, testPoint) || (test.transconductance !== null) !== measured) return null
  const { plateCurrent, transconductance } = test
  return { mark, plateCurrent, transconductance }
}
