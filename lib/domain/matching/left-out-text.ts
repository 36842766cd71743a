/** Why tubes could not stand in a set, told of all of them together. */
import type { Words } from '../words'
import type { ExclusionCode, LeftOut } from './proposal'

/** "12 reserved, 3 without a usable test record". A tube with two reasons is in both. */
export const leftOutText = ({ byReason }: LeftOut, words: Words): string =>
  byReason.map(({ code, tubes }) => `${tubes} ${reasonText(code, words)}`).join(', ')

function reasonText(code: ExclusionCode, words: Words): string {
  switch (code) {
    case 'wrong-type':
      return 'of another type'
    case 'wrong-base':
      return 'with another base'
    case 'reserved':
      return 'reserved'
    case 'fitted':
      return 'fitted'
    case 'gone':
      return 'no longer in stock'
    case 'condition-reject':
      return 'marked as rejects'
    case 'untested':
      return 'without a usable test record'
    case 'shorted':
      return 'that showed a short'
    case 'dead':
      return 'that read nothing'
    case 'test-too-old':
      return 'tested too long ago'
    case 'test-in-future':
      return 'with a test dated ahead'
    case 'plate-voltage-over-rating':
      return `rated below the ${words.plate} voltage here`
    case 'screen-voltage-over-rating':
      return 'rated below the screen voltage here'
    case 'idle-over-dissipation':
      return 'rated below the idle dissipation here'
    case 'predicted-over-dissipation':
      return 'that would idle above their rating'
    case 'cannot-say':
      return 'of which nothing can be predicted here'
    case 'over-price-cap':
      return 'dearer alone than the set may be'
    case 'other-test-point':
      return 'tested at another point'
    case 'other-instrument':
      return 'tested on another instrument'
    case 'other-designation':
      return 'of another variant'
    case 'transconductance-differs':
      return 'compared by other figures'
  }
}
