/**
 * Sentences for the quote out of a round of readings, for the technician to
 * correct: what each output socket idles at and what that means, and how alike
 * the tubes are. Nothing is said of a socket that could not be worked out; a
 * guess is marked as an estimate.
 */
import type { BenchResult, SocketResult } from '@/lib/domain/bench/bench-result'
import { milliampsText, voltsText, wattsText } from '@/lib/domain/bias/bias-figures'
import { balanceText, cautionText, overRatingText, verdictText } from '@/lib/domain/bias/bias-text'
import type { Caution, IdleResult } from '@/lib/domain/bias/idle'
import type { Words } from '@/lib/domain/words'

/** What a customer should know of; the rest is for the bench. */
const TOLD: readonly Caution['kind'][] = ['grid-positive', 'screen-not-above-cathode', 'dead-socket']

export function proposedFindings({ sockets, groups }: BenchResult, words: Words): string[] {
  const balance = groups.flatMap((group) => balanceText(group.balance, words))
  return [...sockets.flatMap((socket) => socketSentences(socket, words)), ...balance]
}

function socketSentences({ socket, outcome }: SocketResult, words: Words): string[] {
  if (outcome.kind !== 'idle') return []
  const { idle } = outcome
  const parts = [`${socket.position} (${idle.designation}): ${readsText(idle, words)}. ${verdictText(idle, words)}`]
  const over = overRatingText(idle, words)
  const told = idle.cautions.filter(({ kind }) => TOLD.includes(kind)).map((caution) => cautionText(caution, words))
  return [[...parts, ...(over ? [over] : []), ...told].join(' ')]
}

function readsText({ plateToCathodeVolts, plateAmps, plateWatts }: IdleResult, words: Words): string {
  const estimate = plateAmps.estimate ? ', in part estimated' : ''
  return `idles at ${milliampsText(plateAmps.value)} and ${voltsText(plateToCathodeVolts.value)} ${words.plate} to cathode, ${wattsText(plateWatts.value)}${estimate}`
}
