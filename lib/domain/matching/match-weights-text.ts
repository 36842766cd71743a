/** Names and reasons of the weights, for a page that says how sets are weighed. */
import { capital, type Words } from '../words'
import type { MatchWeights, SetArrangement } from './match-weights'

export function arrangementName(arrangement: SetArrangement, { tube, tubes }: Words): string {
  switch (arrangement) {
    case 'one-trim':
      return 'Push-pull, one adjustment for all'
    case 'individual-trims':
      return `Push-pull, an adjustment for each ${tube}`
    case 'cathode-shared':
      return 'Push-pull, one cathode resistor shared'
    case 'cathode-separate':
      return `Push-pull, a cathode resistor for each ${tube}`
    case 'parallel-pairs':
      return `Push-pull, ${tubes} in parallel on each side`
    case 'single-ended':
      return 'Single-ended'
  }
}

export function arrangementReason(arrangement: SetArrangement, { tube, tubes, plate }: Words): string {
  switch (arrangement) {
    case 'one-trim':
      return `The adjustment moves all ${tubes} together, so it cannot make them equal: ${plate} current counts in full, transconductance half. How far the idle is from the aim does not count, as it is adjusted.`
    case 'individual-trims':
      return `Each ${tube} is brought to the same idle by its own adjustment: ${plate} current counts little, transconductance in full.`
    case 'cathode-shared':
      return `The resistor holds the sum and leaves the differences: ${plate} current counts in full. Nothing is adjusted, so the distance from the idle aimed at counts too. What each would do is predicted among its like, which hides part of the differences: such a set is called uncertain.`
    case 'cathode-separate':
      return `Each resistor evens out its own ${tube}: both spreads count alike, somewhat less than in full. Nothing is adjusted, so the distance from the idle aimed at counts too.`
    case 'parallel-pairs':
      return `What must balance is the sum of each side, the ${tubes} seated so that the sums lie as close as they can: their difference counts in full, the spread within the set somewhat less.`
    case 'single-ended':
      return `No other side has to be balanced: the spreads count half, the distance from the idle aimed at as much.`
  }
}

export type WeightText = { readonly name: string; readonly unit: string; readonly reason: string }

export function weightText(weight: keyof MatchWeights, { tube, tubes, plate }: Words): WeightText {
  switch (weight) {
    case 'currentSpread':
      return {
        name: `${capital(plate)} current spread`,
        unit: 'per yardstick between the highest and the lowest of the set',
        reason: 'Halves that draw unequal current magnetise the transformer and hum.',
      }
    case 'slopeSpread':
      return {
        name: 'Transconductance spread',
        unit: 'per yardstick between the highest and the lowest of the set',
        reason: 'Halves that amplify unequally distort on loud notes, however equal their idle.',
      }
    case 'sideDifference':
      return {
        name: 'Difference of the sides',
        unit: `per yardstick between the sums of ${plate} current on both sides`,
        reason: `Only where ${tubes} stand in parallel on each side: the transformer is magnetised by the difference of the sums, however far the ${tubes} of one side lie apart. Of a pair it is the spread.`,
      }
    case 'aim':
      return {
        name: 'Distance from the idle aimed at',
        unit: 'per yardstick, mean of the set',
        reason: `Only where nothing trims the idle and it could be predicted: a ${tube} that idles right as it is needs no other resistor.`,
      }
    case 'price':
      return {
        name: 'Price',
        unit: 'per usual price of such a set',
        reason: 'Of sets that do as well the cheaper goes first.',
      }
    case 'rarity':
      return {
        name: 'Rarity',
        unit: `per whole stock of its variant that the set takes`,
        reason: `${capital(tubes)} of a variant of which few are left are kept for those who need them.`,
      }
    case 'confidence':
      return {
        name: 'Doubt of the prediction, or of carrying over',
        unit: 'per yardstick of half the 95 % band, mean of the set',
        reason: `A ${tube} tested near the voltages of this amplifier is known better than one tested far from them, and one read on the same instrument as the others better than one carried over.`,
      }
    case 'age':
      return {
        name: 'Age of the tests',
        unit: 'per year, mean of the set',
        reason: 'An old test says less of what is in the box today.',
      }
  }
}
