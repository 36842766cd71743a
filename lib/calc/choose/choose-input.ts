/** What `calc choose` takes: the sockets, the tubes with their readings, and, if it is known, the circuit they are for. */
import { z } from 'zod'
import { milliampsFromZero, name } from '@/lib/calc/input/quantities'
import { socketWiring, stageSupplies } from '@/lib/calc/input/stage-input'
import { wordSet } from '@/lib/calc/input/word-set'
import {
  compareOn,
  setLimits,
  stockedTube,
  testerCorrections,
  testPlace,
  wantedSet,
} from '@/lib/calc/share/share-input'
import { SET_ARRANGEMENTS } from '@/lib/domain/matching/match-weights'

const weight = (meaning: string) => z.number().min(0).max(10).optional().describe(meaning)

const weights = z
  .strictObject({
    currentSpread: weight('Highest less lowest plate current, per yardstick.'),
    slopeSpread: weight('Highest over lowest transconductance less one, per yardstick.'),
    sideDifference: weight('Between the sums of plate current of two sides of tubes in parallel, per yardstick.'),
    aim: weight('Distance from the current aimed at, per yardstick, mean of the set.'),
    price: weight('Price of a tube over the usual one of the stock.'),
    rarity: weight('Share of its variant that the set takes.'),
    confidence: weight('Half of the 95 % band of the plate current, per yardstick, mean of the set.'),
    age: weight('Age of the test; all count as of one day here.'),
  })
  .default({})
  .describe('To the thousandth. Left out: the usual ones of the arrangement.')

const circuit = z.strictObject({
  sockets: z.array(z.strictObject({ socket: name('V3.'), ...socketWiring })).describe('As many as the set has tubes.'),
  ...stageSupplies,
})

export const chooseInput = z.strictObject({
  set: wantedSet
    .extend({
      arrangement: z
        .enum(SET_ARRANGEMENTS)
        .optional()
        .describe('How the idle is set. Left out: by the circuit; without one, one trim or single-ended.'),
      aimMilliamps: milliampsFromZero('Plate current each should idle at. Left out: none.').optional(),
    })
    .describe('What the sockets want.'),
  test: testPlace.describe('Where the tubes were read that say nothing else.'),
  stock: z.array(stockedTube).max(100_000),
  limits: setLimits,
  weights,
  circuit: circuit
    .optional()
    .describe('The output stage. Tubes are then compared as each would idle in it, not at their test points.'),
  corrections: testerCorrections,
  compareOn,
  words: wordSet,
})

export type ChooseGiven = z.output<typeof chooseInput>
export type CircuitGiven = NonNullable<ChooseGiven['circuit']>
