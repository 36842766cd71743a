/** What is missing before idle can be worked out, said so that it can be mended. */
import { capital, type Words } from '@/lib/domain/words'
import type { ReadingGap } from './reading-of-socket'

export function readingGapText(gap: ReadingGap, words: Words): string {
  const { socket } = gap
  switch (gap.code) {
    case 'type-not-noted':
      return `${socket}: no ${words.tube} type is on the sheet, so there is no rating to hold the reading against.`
    case 'type-not-in-handbook':
      return `${socket}: “${gap.designation}” is not in the handbook, so no rating is known. Current cannot be judged. If the sheet is right, write the type down under ${capital(words.tube)} data.`
    case 'plate-volts-missing':
      return `${socket}: ${words.plate} volts were not read. Without them there is no dissipation.`
    case 'no-current-read':
      return `${socket}: no drop was read that tells the current. ${capital(words.plate)} volts alone do not judge a ${words.tube}.`
    case 'bias-kind-not-noted':
      return `${socket}: the sheet does not say whether the grid is supplied or a cathode resistor sets the idle current. The two are held to different windows.`
    case 'resistance-not-on-sheet':
      return `${socket}: the sheet has no value for the ${gap.part}, over which the drop was read. Measure it with the amplifier dead and enter it.`
  }
}
