/** What an answer means for the bottle itself, whichever it is. */
import type { Remark } from './designation/designation-reading'
import type { Seen } from './seen'

const FLASH: Readonly<Record<string, Remark>> = {
  white: {
    sentence: 'A chalk-white getter: air is in. The bottle is dead; do not put it into a tester.',
    source: 'getter-page',
  },
  faded: {
    sentence: 'The getter is nearly gone: gas is likely, or a long life. A brown or black edge alone shows no use.',
    source: 'memory',
  },
  dark: { sentence: 'A brown or black edge of the getter shows no use.', source: 'getter-1950' },
}

const STYLE: Remark = {
  sentence: '%Plate colour and ribs are the maker’s style: kept as text, they settle neither type nor year.',
  source: 'practice',
}

export function seenRemarks({ choices }: Seen): readonly Remark[] {
  const flash = choices.flash && FLASH[choices.flash]
  const styled = choices.plateColour !== undefined || choices.plateShape !== undefined
  return [...(flash ? [flash] : []), ...(styled ? [STYLE] : [])]
}
