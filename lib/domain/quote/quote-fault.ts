/** Why a step on a quote or its mail is refused, and the sentence for it. */
import { formatDay } from '@/lib/domain/calendar'
import type { MailState } from '@/lib/domain/quote/mail'
import type { Words } from '@/lib/domain/words'
import { type QuoteState, quoteStateWord } from './quote'

export type QuoteFault =
  /** `quote` is "Q2001, revision 1". */
  | { readonly code: 'quote-not-draft'; readonly quote: string; readonly state: QuoteState }
  | { readonly code: 'quote-not-waiting'; readonly quote: string; readonly state: QuoteState }
  | { readonly code: 'quote-not-answered'; readonly quote: string; readonly state: QuoteState }
  | { readonly code: 'quote-not-out'; readonly quote: string }
  | { readonly code: 'quote-empty'; readonly quote: string }
  | { readonly code: 'quote-below-zero'; readonly quote: string }
  | { readonly code: 'valid-day-past'; readonly validUntil: string; readonly today: string }
  | { readonly code: 'validity-over'; readonly quote: string; readonly validUntil: string }
  | { readonly code: 'answer-ahead' }
  | { readonly code: 'answer-before-quote' }
  | { readonly code: 'no-address'; readonly customer: string }
  | { readonly code: 'tube-twice'; readonly mark: string }
  | {
      readonly code: 'tube-not-free'
      readonly mark: string
      readonly position: string
      readonly why: 'held' | 'reserved' | 'fitted' | 'sold' | 'scrapped'
      readonly jobNumber: string | null
    }
  | { readonly code: 'work-begun'; readonly fitted: number; readonly done: number }
  | { readonly code: 'mail-settled'; readonly state: MailState }
  | { readonly code: 'no-tube-quoted'; readonly quote: string; readonly position: string }
  | { readonly code: 'exchange-for-itself'; readonly mark: string; readonly position: string }
  /** `on` is the socket it stands for on the same quote. */
  | { readonly code: 'exchange-taken'; readonly mark: string; readonly on: string }
  /** It sits in the socket, so it is taken out first. */
  | { readonly code: 'exchange-fitted'; readonly mark: string; readonly position: string }
  /** `why` is whole sentences. */
  | { readonly code: 'exchange-unfit'; readonly mark: string; readonly position: string; readonly why: string }
  /** Prices are written out already, in the shop's currency. */
  | {
      readonly code: 'exchange-dearer'
      readonly mark: string
      readonly position: string
      readonly price: string
      readonly agreed: string
      readonly quote: string
    }

export function quoteFaultText(fault: QuoteFault, words: Words): string {
  switch (fault.code) {
    case 'quote-not-draft':
      return `Quote ${fault.quote} is ${quoteStateWord(fault.state)} and is not edited any more. Revise it first, then change the revision.`
    case 'quote-not-waiting':
      return `Quote ${fault.quote} is not waiting for an answer: it is ${quoteStateWord(fault.state)}.`
    case 'quote-not-answered':
      return `No answer stands on quote ${fault.quote}: it is ${quoteStateWord(fault.state)}.`
    case 'quote-not-out':
      return `Quote ${fault.quote} is still a draft. Send it or print it first.`
    case 'quote-empty':
      return `Quote ${fault.quote} has no lines yet. Add what the work will cost.`
    case 'quote-below-zero':
      return `Quote ${fault.quote} adds up to less than nothing. Check the credits on it.`
    case 'valid-day-past':
      return `Valid until ${formatDay(fault.validUntil, words.locale)} is past; today is ${formatDay(fault.today, words.locale)}. Choose a later day.`
    case 'validity-over':
      return `Quote ${fault.quote} was valid until ${formatDay(fault.validUntil, words.locale)} and no longer binds. Revise it with a new day, and let the customer answer that one.`
    case 'answer-ahead':
      return 'The time of the answer is still to come. Enter when the customer answered.'
    case 'answer-before-quote':
      return 'The time of the answer is before the quote was sent. Enter when the customer answered this quote.'
    case 'no-address':
      return `${fault.customer} has no e-mail address on file. Print the quote and hand it over, or write the address down first.`
    case 'tube-twice':
      return `${fault.mark} is chosen for two sockets. One ${words.tube} sits in one socket.`
    case 'tube-not-free':
      return `${fault.mark}, chosen for ${fault.position}, ${whyNot(fault)}. Nothing was saved; choose another ${words.tube}.`
    case 'work-begun':
      return `Work has followed this answer (${workText(fault, words)}), so it stays on record. Revise the quote for anything that changes.`
    case 'mail-settled':
      return mailSettledText(fault.state)
    case 'no-tube-quoted':
      return `Quote ${fault.quote} names no ${words.tube} for ${fault.position}, so there is none to exchange.`
    case 'exchange-for-itself':
      return `${fault.mark} stands for ${fault.position} already. Choose another ${words.tube}.`
    case 'exchange-taken':
      return `${fault.mark} stands for ${fault.on} on the same quote. One ${words.tube} sits in one socket.`
    case 'exchange-fitted':
      return `${fault.mark} sits in ${fault.position} already, so this is a change at the bench: in the work step press “Take out again”, then exchange it there.`
    case 'exchange-unfit':
      return `${fault.mark} may not go into ${fault.position}: ${fault.why} Nothing was saved.`
    case 'exchange-dearer':
      return `${dearerText(fault)} Nothing was saved.`
  }
}

/** Said before the press too. */
export function dearerText({
  mark,
  position,
  price,
  agreed,
  quote,
}: Omit<Extract<QuoteFault, { code: 'exchange-dearer' }>, 'code'>): string {
  return `${mark} costs ${price}; quote ${quote} says ${agreed} for ${position}. The customer pays no more than was quoted without saying yes to it: revise the quote with ${mark}, and let the customer answer that one.`
}

function whyNot({ why, jobNumber }: Extract<QuoteFault, { code: 'tube-not-free' }>): string {
  const job = jobNumber ? `job ${jobNumber}` : 'another job'
  switch (why) {
    case 'held':
      return `is held for ${job} by a quote that is still open`
    case 'reserved':
      return `is reserved for ${job}`
    case 'fitted':
      return `was fitted on ${job}`
    case 'sold':
    case 'scrapped':
      return `is ${why} and not in stock any more`
  }
}

type WorkBegun = { readonly fitted: number; readonly done: number }

function workText({ fitted, done }: WorkBegun, { tube, tubes }: Words): string {
  const counted = (count: number, one: string, many: string) =>
    count === 0 ? [] : [`${count} ${count === 1 ? one : many}`]
  return [...counted(fitted, `${tube} fitted`, `${tubes} fitted`), ...counted(done, 'line done', 'lines done')].join(
    ', ',
  )
}

function mailSettledText(state: MailState): string {
  switch (state) {
    case 'sent':
      return 'This mail has gone out already.'
    case 'sending':
      return 'This mail is being sent at this moment. Look again in a minute.'
    case 'cancelled':
      return 'This mail was cancelled and is not sent any more.'
    case 'waiting':
    case 'failed':
      return 'This mail was changed meanwhile. Look again.'
  }
}
