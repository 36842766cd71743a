/** Fixtures: a good 6L6GC and sockets it suits, with overrides, and a repeatable stock. */
import type { Candidate, MatchLimits, SocketDemand, TubeTest } from '@/lib/domain/matching/candidate'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import type { MatchWeights } from '@/lib/domain/matching/match-weights'
import { money } from '@/lib/domain/money'
import { amps, siemens, volts, watts } from '@/lib/domain/units'

export const AS_OF = '2031-05-20'

/** Both spreads in full; of sets as close the cheaper. */
export const EVEN: MatchWeights = {
  currentSpread: 1,
  slopeSpread: 1,
  sideDifference: 0,
  aim: 0,
  price: 0.01,
  rarity: 0,
  confidence: 0,
  age: 0,
}

export function aTest(over: Partial<TubeTest> = {}): TubeTest {
  return {
    testedAt: '2031-05-01T10:00:00.000Z',
    instrument: 'Bench tester 1',
    testPoint: { plateVoltage: volts(250), screenVoltage: volts(250), gridVoltage: volts(-14) },
    plateCurrent: amps(0.072),
    transconductance: siemens(0.006),
    shorts: false,
    leakageNote: null,
    ...over,
  }
}

export function aTube(mark: string, over: Partial<Candidate> = {}): Candidate {
  return {
    tubeId: `id-${mark}`,
    mark,
    designation: '6L6GC',
    family: '6L6',
    base: 'octal',
    ratings: { maxPlateVoltage: volts(500), maxScreenVoltage: volts(450), maxPlateDissipation: watts(30) },
    condition: 'used-tested',
    price: money(4000),
    state: { kind: 'free' },
    test: aTest(),
    ...over,
  }
}

/** Readings in mA and mA/V, price in minor units. */
export function readTube(mark: string, milliamps: number, slope: number | null, price = 4000): Candidate {
  const transconductance = slope === null ? null : siemens(slope / 1000)
  return aTube(mark, { price: money(price), test: aTest({ plateCurrent: amps(milliamps / 1000), transconductance }) })
}

export function aDemand(count: number, over: Partial<SocketDemand> = {}): SocketDemand {
  return {
    count,
    family: '6L6',
    base: 'octal',
    pushPull: count % 2 === 0,
    arrangement: 'one-trim',
    aim: null,
    plateToCathodeVoltage: volts(430),
    screenVoltage: volts(420),
    idlePlateDissipation: watts(19),
    ...over,
  }
}

export function someLimits(over: Partial<MatchLimits> = {}): MatchLimits {
  return {
    maximumTestAgeDays: 365,
    allowOverPrintedRating: false,
    priceCap: null,
    oneDesignation: false,
    yardsticks: USUAL_YARDSTICKS,
    weights: EVEN,
    asOf: AS_OF,
    ...over,
  }
}

/** mulberry32, a public-domain generator: the same numbers on every machine. */
export function generator(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

export function shuffled<T>(items: readonly T[], random: () => number): T[] {
  const result = [...items]
  for (let place = result.length - 1; place > 0; place -= 1) {
    const other = Math.floor(random() * (place + 1))
    ;[result[place], result[other]] = [result[other] as T, result[place] as T]
  }
  return result
}

type StockShape = {
  readonly size: number
  /** Readings are rounded to these, in mA and mA/V: coarse steps give many ties. */
  readonly currentStep: number
  readonly slopeStep: number
  readonly priceStep: number
}

export function randomStock(
  random: () => number,
  { size, currentStep, slopeStep, priceStep }: StockShape,
): Candidate[] {
  const stepped = (low: number, high: number, step: number) => Math.round((low + random() * (high - low)) / step) * step
  return Array.from({ length: size }, (_, place) =>
    readTube(
      `M-${place + 1}`,
      stepped(50, 90, currentStep),
      stepped(4.5, 7.5, slopeStep),
      Math.round(stepped(2000, 9000, priceStep)),
    ),
  )
}
