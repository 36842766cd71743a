/**
 * What a system of ratings promises. The wording is short for the definitions printed in the
 * front of receiving-tube handbooks, from memory.
 */
import type { Words } from '../words'
import type { RatingSystem } from './tube-variant'

export const RATING_SYSTEMS: readonly RatingSystem[] = ['design-centre', 'design-maximum', 'absolute', 'not-stated']

export function ratingSystemMeaning(system: RatingSystem, { tube, mains }: Pick<Words, 'tube' | 'mains'>): string {
  switch (system) {
    case 'design-centre':
      return `Room for usual spread of ${mains} voltage and parts is left in the figure already: it holds for equipment at its rated ${mains} voltage.`
    case 'design-maximum':
      return `An average ${tube} must stay within it under the worst conditions the equipment meets: high ${mains} voltage and parts at their limits count against it.`
    case 'absolute':
      return `No ${tube} may go beyond it at any time, whatever ${mains}, parts or the ${tube} itself do.`
    case 'not-stated':
      return `The source does not say which system holds. Taken as it stands; it may leave room or none.`
  }
}
