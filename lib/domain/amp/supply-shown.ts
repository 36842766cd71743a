/** Supply facts as people read them: on the sheet, on paper and in the history. */
import { type Shown, shown } from '@/lib/domain/history/changes'
import type { Words } from '@/lib/domain/words'
import { SUPPLY_BOUNDS, SUPPLY_NUMBERS, type SupplyNumber } from './supply-bounds'
import { type ScreenFeedKind, SOLID_STATE, type SupplyFacts } from './supply-facts'

export const screenFeedWord = (feed: ScreenFeedKind, { plate }: Pick<Words, 'plate'>): string =>
  ({
    'own-supply': 'from the supply',
    'ultralinear-tap': 'from taps of the output transformer',
    'triode-strapped': `joined to the ${plate} (triode)`,
  })[feed]

export const rectifierText = (type: string): string => (type === SOLID_STATE ? 'silicon' : type)

function numberText(facts: SupplyFacts, key: SupplyNumber): string {
  const value = facts[key]
  const { unit, scale = 1 } = SUPPLY_BOUNDS[key]
  return value === null ? '' : `${Number((value / scale).toPrecision(9))} ${unit}`
}

/** Only what is known has a text. */
export function supplyShown(facts: SupplyFacts, words: Pick<Words, 'plate'>): Shown {
  const { rectifierType, screenFeed } = facts
  return shown([
    ['Rectifier', rectifierType === null ? '' : rectifierText(rectifierType)],
    ['Screens fed', screenFeed === null ? '' : screenFeedWord(screenFeed, words)],
    ...SUPPLY_NUMBERS.map((key): [string, string] => [SUPPLY_BOUNDS[key].label, numberText(facts, key)]),
  ])
}
