/** Why work, payment or hand-over of a job is refused, and the sentence for it. */
import type { Words } from '@/lib/domain/words'
import { type JobState, jobStateWord } from './job-state'

/** Amounts are written out already, in the shop's currency. */
export type PickupFault =
  | { readonly code: 'work-closed'; readonly state: JobState }
  | { readonly code: 'no-tube-ordered'; readonly position: string }
  | { readonly code: 'socket-not-on-sheet'; readonly position: string }
  | { readonly code: 'socket-holds'; readonly position: string; readonly mark: string }
  | { readonly code: 'not-fitted-here'; readonly position: string }
  | { readonly code: 'nothing-owed' }
  | { readonly code: 'overpaid'; readonly amount: string; readonly balance: string }
  | { readonly code: 'refund-too-high'; readonly amount: string; readonly most: string }
  | { readonly code: 'no-amount' }
  | { readonly code: 'items-left'; readonly labels: readonly string[] }
  | { readonly code: 'balance-open'; readonly balance: string }
  | { readonly code: 'balance-over'; readonly over: string }
  | { readonly code: 'collector-missing' }
  | { readonly code: 'identity-missing'; readonly name: string }
  | { readonly code: 'return-reason-missing' }
  | { readonly code: 'way-missing'; readonly balance: string }
  | { readonly code: 'not-handed-over'; readonly state: JobState }
  | { readonly code: 'take-back-reason-missing' }
  | { readonly code: 'taken-in-since'; readonly jobNumber: string }

export function pickupFaultText(fault: PickupFault, words: Words): string {
  switch (fault.code) {
    case 'work-closed':
      return `The job is “${jobStateWord(fault.state)}”, so no work is noted on it. ${fault.state === 'ready' || fault.state === 'uncollected' ? 'Move it back to testing first; it is then released anew.' : 'Take the amplifier in again.'}`
    case 'no-tube-ordered':
      return `No accepted quote names a ${words.tube} for ${fault.position}.`
    case 'socket-not-on-sheet':
      return `${fault.position} is not on the sheet of this amplifier any more. Put it back on the sheet, or revise the quote.`
    case 'socket-holds':
      return `${fault.position} already holds ${fault.mark}, fitted on this job. Take it out again first.`
    case 'not-fitted-here':
      return `No ${words.tube} is fitted in ${fault.position} by this job. It may have been taken out meanwhile.`
    case 'nothing-owed':
      return 'Nothing is owed on this job, so no payment is taken.'
    case 'overpaid':
      return `${fault.amount} is more than is owed: the balance is ${fault.balance}.`
    case 'refund-too-high':
      return `${fault.amount} is more than can be given back: ${fault.most} was paid above what is owed.`
    case 'no-amount':
      return 'The amount is nothing. Type what was paid.'
    case 'items-left':
      return `Not ticked as given back: ${fault.labels.join(', ')}. Tick them, or note why they stay.`
    case 'balance-open':
      return `${fault.balance} is still owed. Take the payment first, or note what was agreed about it.`
    case 'balance-over':
      return `${fault.over} was paid too much. Give it back first, or note what was agreed about it.`
    case 'collector-missing':
      return 'Write down who collects it.'
    case 'identity-missing':
      return `${fault.name} is not the owner. Write down what was shown to prove who it is.`
    case 'return-reason-missing':
      return 'Say why it goes back unrepaired. The reason is printed on the sheet.'
    case 'way-missing':
      return `${fault.balance} changes hands. Say how, or note what was agreed about it.`
    case 'not-handed-over':
      return `The job is “${jobStateWord(fault.state)}”, so there is no hand-over of a repaired amplifier to take back.`
    case 'take-back-reason-missing':
      return 'Say why the hand-over is taken back. The reason stands in the history and on the sheet that no longer holds.'
    case 'taken-in-since':
      return `The amplifier was taken in again as job ${fault.jobNumber}, so it had left: the hand-over stands.`
  }
}
