/**
 * How the parts of a choice weigh against each other, by the way the idle of the sockets is
 * set. A weight of 1 counts one yardstick as one; the unit of every part stands beside it.
 *
 * Plate current first where an amplifier has no trims of its own per tube, transconductance
 * first where it has (common practice, no source). The figures themselves are shop rules, no
 * source. All are whole thousandths: the search reckons in whole numbers.
 */
export const SET_ARRANGEMENTS = [
  'one-trim',
  'individual-trims',
  'cathode-shared',
  'cathode-separate',
  'parallel-pairs',
  'single-ended',
] as const

export type SetArrangement = (typeof SET_ARRANGEMENTS)[number]

export type MatchWeights = {
  /** Highest less lowest plate current of the set, per yardstick. */
  readonly currentSpread: number
  /** Highest over lowest transconductance less one, per yardstick. Not both spreads are 0. */
  readonly slopeSpread: number
  /**
   * Difference between the sums of plate current of the two sides, the tubes seated so that it is
   * least, per yardstick. Only where tubes stand in parallel on each side: of a pair it is the spread.
   */
  readonly sideDifference: number
  /** Distance of the plate current from the idle aimed at, per yardstick, mean of the set. Only where it is predicted. */
  readonly aim: number
  /** Price of the set, per median price of as many tubes in the running. */
  readonly price: number
  /** Share that the set takes of the tubes of its variant in the running, mean of the set. */
  readonly rarity: number
  /** Half-width of the band of the plate current, per yardstick, mean of the set. Only where it is predicted, or carried from another instrument. */
  readonly confidence: number
  /** Age of the tests, per year, mean of the set. */
  readonly age: number
}

const COSTS = { price: 0.1, rarity: 0.2, confidence: 0.1, age: 0.05 } as const

export const USUAL_WEIGHTS: Readonly<Record<SetArrangement, MatchWeights>> = {
  'one-trim': { currentSpread: 1, slopeSpread: 0.5, sideDifference: 1, aim: 0, ...COSTS },
  'individual-trims': { currentSpread: 0.2, slopeSpread: 1, sideDifference: 0.2, aim: 0, ...COSTS },
  'cathode-shared': { currentSpread: 1, slopeSpread: 0.5, sideDifference: 1, aim: 0.5, ...COSTS },
  'cathode-separate': { currentSpread: 0.7, slopeSpread: 0.7, sideDifference: 0.7, aim: 0.5, ...COSTS },
  'parallel-pairs': { currentSpread: 0.8, slopeSpread: 0.5, sideDifference: 1, aim: 0, ...COSTS },
  'single-ended': { currentSpread: 0.5, slopeSpread: 0.5, sideDifference: 0, aim: 0.5, ...COSTS },
}

/** Spread, sides and aim alone: the closest match. Of sets as close the cheaper goes first. */
export const closenessOf = (weights: MatchWeights): MatchWeights => ({
  ...weights,
  price: 0.01,
  rarity: 0,
  confidence: 0,
  age: 0,
})

/** Sockets whose idle nothing can trim: a tube idles there as it will. */
export const isUntrimmed = (arrangement: SetArrangement): boolean =>
  arrangement === 'cathode-shared' || arrangement === 'cathode-separate' || arrangement === 'single-ended'

/** What sides of a push-pull pair are there to be balanced. */
export const hasSides = (arrangement: SetArrangement): boolean => arrangement !== 'single-ended'
