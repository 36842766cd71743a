/** The three neighbours of a price in words: always three lines, each with a figure or “none in stock”. */
import type { Money } from '../money'
import type { Asked, PricedFor, PriceNeighbours } from './price-neighbours'
import { conditionWord } from './tube'

export type PriceLine = { readonly label: string; readonly text: string }

type Wanted = Pick<PricedFor, 'designation' | 'condition'>

export function priceLines(
  { same, pair, lesser }: PriceNeighbours,
  wanted: Wanted,
  show: (amount: Money) => string,
): readonly [PriceLine, PriceLine, PriceLine] {
  const { designation } = wanted
  const what = `${designation}, ${conditionWord(wanted.condition)}`
  const signed = (amount: Money) => `${amount < 0 ? '' : '+ '}${show(amount)}`
  return [
    {
      label: 'The same',
      text: same
        ? `${show(same.price)}: ${what}${same.byStrength ? ', as strong within 10 %' : ', any strength'}; ${rangeText(same, show)}.`
        : `none in stock: no other ${what}, has a price here.`,
    },
    {
      label: 'A matched pair adds',
      text: pair
        ? `${signed(pair.adds)} for each: ${show(pair.paired.price)} in a set against ${show(pair.alone.price)} alone.`
        : `none in stock: no ${designation} is priced both in a set and alone.`,
    },
    {
      label: 'A lesser variant',
      text: lesser
        ? `${show(lesser.price)}: ${lesser.designation}; ${rangeText(lesser, show)}.`
        : 'none in stock: nothing of its family is listed for less.',
    },
  ]
}

const rangeText = ({ low, high, count }: Asked, show: (amount: Money) => string): string =>
  count === 1 ? 'one of them' : `${count} of them, ${low === high ? 'all alike' : `${show(low)} to ${show(high)}`}`
