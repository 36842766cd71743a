/** The tubes of a stock that are in no set shown because they could not stand in one: counted, and the first of them. */
import type { Exclusion, ExclusionCode, Proposal } from './proposal'
import type { Sifted } from './sift'
import { type StockInOrder, tubeAt } from './stock-in-order'

/** Of tubes that are known one by one. */
export function toldOf(all: readonly Exclusion[], listed: number): Pick<Proposal, 'excluded' | 'leftOut'> {
  const counts = new Map<ExclusionCode, number>()
  for (const { reasons } of all)
    countIn(
      counts,
      reasons.map(({ code }) => code),
    )
  return { excluded: all.slice(0, listed), leftOut: { tubes: all.length, byReason: mostFirst(counts) } }
}

type OutOfSets = {
  readonly sifted: Sifted
  /** Good tubes of other cohorts. null: no set was found, so nothing is to compare with. */
  readonly apart: Pick<Sifted, 'excluded' | 'reasonsAt' | 'codesAt'> | null
  /** Of these the first so many. */
  readonly listed: number
}

export function leftOut(
  stock: StockInOrder,
  { sifted, apart, listed }: OutOfSets,
): Pick<Proposal, 'excluded' | 'leftOut'> {
  const excluded: Exclusion[] = []
  const counts = new Map<ExclusionCode, number>()
  let tubes = 0
  for (const some of apart ? [sifted, apart] : [sifted]) {
    for (const place of some.excluded) {
      countIn(counts, some.codesAt(place))
      if (tubes < listed) excluded.push({ candidate: tubeAt(stock, place), reasons: some.reasonsAt(place) })
      tubes += 1
    }
  }
  return { excluded, leftOut: { tubes, byReason: mostFirst(counts) } }
}

type Counts = Map<ExclusionCode, number>

function countIn(counts: Counts, codes: readonly ExclusionCode[]): void {
  for (const code of codes) counts.set(code, (counts.get(code) ?? 0) + 1)
}

const mostFirst = (counts: Counts): Proposal['leftOut']['byReason'] =>
  [...counts].map(([code, tubes]) => ({ code, tubes })).sort((a, b) => b.tubes - a.tubes)
