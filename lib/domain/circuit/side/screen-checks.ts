/** Screen dissipation of every output tube as read, against its rating (checks/screen-dissipation.ts). */
import { benchResult, type SocketResult } from '@/lib/domain/bench/bench-result'
import { screenDissipation } from '@/lib/domain/circuit/checks/screen-dissipation'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { amps, volts, watts } from '@/lib/domain/units'
import { cannotSay, type SideCheck } from './side-check'
import type { SideGiven } from './side-given'

function checkOf({ socket, entry, outcome }: SocketResult): SideCheck | null {
  const head = { name: 'screen-dissipation', part: socket.position } as const
  if (outcome.kind !== 'idle') return cannotSay(head, 'idle readings')
  const { screenWatts, screenRatingWatts, screenAmps, plateToCathodeVolts } = outcome.idle
  if (entry.screenVolts === null || entry.plateVolts === null) return cannotSay(head, 'screen volts')
  if (screenWatts === null) return null
  if (screenRatingWatts === null) return cannotSay(head, 'screen rating')
  const screen = entry.screenVolts - (entry.plateVolts - plateToCathodeVolts.value)
  const { dissipation, share } = screenDissipation(volts(screen), amps(screenAmps.value), watts(screenRatingWatts))
  const percent = 100 * (share ?? 0)
  const crossing = screenWatts.low <= screenRatingWatts && screenWatts.high > screenRatingWatts
  const over = screenWatts.low > screenRatingWatts
  return {
    ...head,
    value: { amount: dissipation, unit: 'W' },
    limit: { amount: screenRatingWatts, unit: 'W' },
    verdict: crossing ? 'caution' : over ? 'over' : 'ok',
    why: crossing ? { code: 'limit-in-band', percent } : { code: 'against-limit', percent },
  }
}

export function screenChecks({ sheet, facts, set, shop }: SideGiven): SideCheck[] {
  if (set === null || facts.screenFeed === 'triode-strapped') return []
  const outputs = benchResult(sheet, set, shop).sockets.filter(({ socket }) => socket.role === 'output')
  return outputs.flatMap((one) => {
    const screened = findTubeType(one.socket.typeFitted, shop)?.typicalScreenShare != null
    return (screened ? checkOf(one) : null) ?? []
  })
}
