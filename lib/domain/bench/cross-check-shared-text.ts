/** What a shared cathode resistor and its sharers' sense resistors say of each other. */
import { bandedMilliampsText, milliampsText, percentText } from '@/lib/domain/bias/bias-figures'
import type { Words } from '@/lib/domain/words'
import type { SharedCheck } from './cross-check-shared'

export function sharedCheckText(
  { resistor, sockets, through, sum, difference, percent, agree }: SharedCheck,
  words: Words,
): string {
  const head = `${resistor} carries ${milliampsText(through.value)}; the sense resistors of ${sockets.join(' and ')} add up to ${milliampsText(sum.value)}: ${bandedMilliampsText(difference)} (${percentText(Math.abs(percent))}) apart.`
  return agree
    ? `${head} They agree.`
    : `${head} They must be the same: what every ${words.tube} returns flows through that resistor. Something between them is not as the sheet says.`
}
