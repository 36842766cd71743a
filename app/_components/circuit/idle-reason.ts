/** The verdict on a computed idle with its reason, the limits named. */
import { percentText, shareText, wattsText } from '@/lib/domain/bias/bias-figures'
import type { IdleWindow } from '@/lib/domain/bias/idle-reading'
import type { Band } from '@/lib/domain/circuit/band'
import type { SocketIdle } from '@/lib/domain/circuit/change/socket-idle'
import type { Words } from '@/lib/domain/words'

const windowText = ({ low, high }: IdleWindow): string =>
  `${shareText(low)} to ${shareText(high)}`.replace(' % to', ' to')

function limitText({ window, limitInBand }: SocketIdle['verdict'], { low, high }: Band): string {
  const band = `the band of ${Math.floor(low)} to ${Math.ceil(high)} %`
  if (limitInBand === 'both') return `Both ends of the window of ${windowText(window)} lie inside ${band}`
  return `The limit of ${shareText(limitInBand === 'low' ? window.low : window.high)} lies inside ${band}`
}

function againstWindow({ platePercent, plateRatingWatts, verdict }: SocketIdle): string {
  if (platePercent === null) return ''
  const computed = `${percentText(platePercent.value)} of ${wattsText(plateRatingWatts ?? 0)}`
  switch (verdict.verdict) {
    case 'within':
      return `${computed}, inside the window of ${windowText(verdict.window)}.`
    case 'over':
      return `${computed}, ${percentText(verdict.percentOff)} too hot for the window of ${windowText(verdict.window)}.`
    case 'under':
      return `${computed}, ${percentText(-verdict.percentOff)} too cold for the window of ${windowText(verdict.window)}.`
    case 'uncertain':
      return `${computed}. ${limitText(verdict, platePercent)}: only a reading tells.`
    case 'no-rating':
      return ''
  }
}

function againstRating({ verdict, plateWatts, plateRatingWatts }: SocketIdle): string {
  if (verdict.overRating === 'yes')
    return ` Over the printed rating: ${wattsText(plateWatts.value)} where ${wattsText(plateRatingWatts ?? 0)} is the most the sheet allows. Do not run it so.`
  return verdict.overRating === 'possibly' ? ' It may be over the printed rating, which lies inside the band.' : ''
}

export function idleReason(idle: SocketIdle, { plate }: Words): string {
  if (idle.platePercent === null) return `No ${plate} rating is known here for ${idle.designation}: idle is not judged.`
  const standsIn = idle.ratingsStandIn ? ' The rating is that of a near relation; its own sheet decides.' : ''
  return `${againstWindow(idle)}${againstRating(idle)}${standsIn}`
}
