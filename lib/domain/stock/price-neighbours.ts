/**
 * Three neighbours of a price, always: what the shop asks for the same variant in
 * the same condition and strength, what a matched pair adds, and what a lesser
 * variant of the family costs. All from the shop's own list; where it says
 * nothing, that is said, and no figure is made up.
 *
 * Strength is plate current at the same test point and instrument, or carried over to it by
 * reference tubes read on both where that is known to 10 %, within 10 %
 * (the tolerance of the trade for tubes that are alike; common practice, no
 * source); without a reading to compare by, strength is left out of it. Prices
 * are medians, which one odd label does not move.
 */

import type { Money } from '../money'
import { money } from '../money'
import { foldedDesignation } from '../tube/folded-designation'
import { isSamePoint } from './alike-point'
import { carriedReading, type InstrumentCorrection } from './instrument-correction'
import { median } from './sheet/outlier'
import type { StockedTube, TubeCondition, TubeTestFacts } from './tube'

/** Of a record, or of one that is only being typed. */
type ReadTest = Pick<TubeTestFacts, 'instrumentName' | 'plateVoltage' | 'screenVoltage' | 'gridVoltage' | 'sections'>

export type PricedFor = {
  readonly designation: string
  readonly condition: TubeCondition
  /** Null: not tested, strength is left out. */
  readonly test: ReadTest | null
  /** Of the tube itself, which is no neighbour of its own. Null: not in the list. */
  readonly tubeId: string | null
}

export type Asked = { readonly price: Money; readonly low: Money; readonly high: Money; readonly count: number }

export type PriceNeighbours = {
  /** `byStrength`: only those of the same strength were taken. */
  readonly same: (Asked & { readonly byStrength: boolean }) | null
  /** For each of the pair, over one that is alone. */
  readonly pair: { readonly adds: Money; readonly paired: Asked; readonly alone: Asked } | null
  readonly lesser: (Asked & { readonly designation: string }) | null
}

const ALIKE = 0.1

/** `family` are the tubes of the family in stock. */
export function priceNeighbours(
  wanted: PricedFor,
  family: readonly StockedTube[],
  corrections: readonly InstrumentCorrection[] = [],
): PriceNeighbours {
  const offered = family.filter(
    ({ tube }) => tube.id !== wanted.tubeId && tube.condition !== 'reject' && tube.price > 0,
  )
  const ofVariant = offered.filter(({ tube }) => isSame(tube.designation, wanted.designation))
  const ofCondition = ofVariant.filter(({ tube }) => tube.condition === wanted.condition)
  return {
    same: sameNeighbour(wanted, ofCondition, corrections),
    pair: pairNeighbour(ofVariant, ofCondition),
    lesser: lesserNeighbour(wanted, offered, ofVariant),
  }
}

const isSame = (a: string, b: string): boolean => foldedDesignation(a) === foldedDesignation(b)

function asked(tubes: readonly StockedTube[]): Asked | null {
  if (tubes.length === 0) return null
  const prices = tubes.map(({ tube }) => tube.price)
  return {
    price: money(Math.round(median(prices))),
    low: money(Math.min(...prices)),
    high: money(Math.max(...prices)),
    count: prices.length,
  }
}

function sameNeighbour(
  { test }: PricedFor,
  ofCondition: readonly StockedTube[],
  corrections: readonly InstrumentCorrection[],
): PriceNeighbours['same'] {
  const isStrong = (each: StockedTube) =>
    test !== null && each.test !== null && isAsStrong(each.test, test, corrections)
  const strong = ofCondition.filter(isStrong)
  const found = asked(strong.length > 0 ? strong : ofCondition)
  return found && { ...found, byStrength: strong.length > 0 }
}

function isAsStrong(a: ReadTest, b: ReadTest, corrections: readonly InstrumentCorrection[]): boolean {
  const [x, y] = [a.sections[0]?.plateCurrent ?? null, b.sections[0]?.plateCurrent ?? null]
  if (x === null || y === null || y === 0 || !isSamePoint(a, b)) return false
  const between = { from: a.instrumentName, to: b.instrumentName, figure: 'plateCurrent' } as const
  const there = carriedReading(x, between, corrections)
  return there.ok && there.value.halfWidth <= ALIKE * y && Math.abs(there.value.value - y) <= ALIKE * y
}

/** In the condition asked for where both kinds are there, else over all conditions. */
function pairNeighbour(
  ofVariant: readonly StockedTube[],
  ofCondition: readonly StockedTube[],
): PriceNeighbours['pair'] {
  for (const tubes of [ofCondition, ofVariant]) {
    const sets = new Set(tubes.map(({ tube }) => tube.further.setName).filter(Boolean))
    const isPaired = ({ tube }: StockedTube) =>
      sets.has(tube.further.setName) &&
      tubes.filter((each) => each.tube.further.setName === tube.further.setName).length >= 2
    const [paired, alone] = [asked(tubes.filter(isPaired)), asked(tubes.filter((each) => !each.tube.further.setName))]
    if (paired && alone) return { adds: money(paired.price - alone.price), paired, alone }
  }
  return null
}

/** The nearest below: of the variants that cost less, the dearest. */
function lesserNeighbour(
  { condition, designation }: PricedFor,
  offered: readonly StockedTube[],
  ofVariant: readonly StockedTube[],
): PriceNeighbours['lesser'] {
  const inCondition = (tubes: readonly StockedTube[]) => tubes.filter(({ tube }) => tube.condition === condition)
  const own = asked(inCondition(ofVariant)) ?? asked(ofVariant)
  const others = [...new Set(offered.map(({ tube }) => tube.designation))].filter((each) => !isSame(each, designation))
  const found = others.flatMap((each) => {
    const tubes = offered.filter(({ tube }) => tube.designation === each)
    const price = asked(inCondition(tubes)) ?? asked(tubes)
    return price && (own === null || price.price < own.price) ? [{ ...price, designation: each }] : []
  })
  return found.reduce<PriceNeighbours['lesser']>((best, each) => (best && best.price >= each.price ? best : each), null)
}
