/** What keeps tubes out of the safe set, and what the safe set keeps. */
import type { Words } from '../words'
import type { MarginCode } from './margin-code'
import type { Proposal } from './proposal'
import { SAFE_MARGINS } from './safe-margins'

const percent = (share: number): string => `${Math.round(100 * share)} %`

export const safeMarginsText = ({ plate }: Words): string =>
  `Voltages within ${percent(SAFE_MARGINS.voltageShare)} and ${plate} dissipation within ${percent(SAFE_MARGINS.dissipationShare)} of ratings that are known (where the idle is predicted, the upper end of its band within the rating), tested within ${SAFE_MARGINS.testAgeDays} days with nothing noted against them.`

export function marginText(code: MarginCode, { plate }: Words): string {
  switch (code) {
    case 'voltage-near-rating':
      return `a voltage is above ${percent(SAFE_MARGINS.voltageShare)} of its printed rating`
    case 'rating-not-sure':
      return 'a rating is not known, or stands in from a plainer type'
    case 'dissipation-near-rating':
      return `the ${plate} dissipation is too near its rating`
    case 'test-not-fresh':
      return `the test is older than ${SAFE_MARGINS.testAgeDays} days`
    case 'test-noted-fault':
      return 'leakage or gas was noted at the test'
    case 'slope-not-measured':
      return 'transconductance was not measured'
    case 'band-wide':
      return `its idle is not known to ${percent(SAFE_MARGINS.bandShare)}, or lies well outside the printed rows`
    case 'condition-not-sure':
      return 'it is a pull, or as found'
    case 'socket-not-measured':
      return 'a voltage or the idle of the sockets was not measured'
  }
}

export const unsafeText = ({ code, tubes }: Proposal['unsafe'][number], words: Words): string =>
  `of ${tubes} ${tubes === 1 ? words.tube : words.tubes} ${marginText(code, words)}`
