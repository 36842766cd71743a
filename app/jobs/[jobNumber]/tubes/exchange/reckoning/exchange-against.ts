/** Why nothing can be exchanged here now whichever tube it is, in a sentence. Null: it can. */
import { isClosed } from '@/lib/domain/job/job-state'
import { type Actor, mayDo } from '@/lib/domain/person/role'
import { quoteTitle, stateNow } from '@/lib/domain/quote/quote'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { openToWork } from '@/lib/workflow/work/do-work'
import type { ExchangeView } from './exchange-view'

export function exchangeAgainst(view: ExchangeView, actor: Actor): string | null {
  const fault = faultOf(view, actor)
  return fault && stepFaultText(fault, view.shop)
}

function faultOf({ job, quote, out, asked, view, shop }: ExchangeView, actor: Actor): StepFault | null {
  const state = stateNow(quote, view.now, shop.timeZone)
  const named = quoteTitle(quote)
  if (isClosed(job.state)) return { code: 'job-closed', state: job.state }
  if (state === 'lapsed') return { code: 'validity-over', quote: named, validUntil: quote.validUntil }
  if (state === 'declined' || state === 'superseded') return { code: 'quote-not-waiting', quote: named, state }
  if (state === 'accepted' && !openToWork(job.state)) return { code: 'work-closed', state: job.state }
  if (state === 'accepted' && !mayDo(actor, 'bench-work')) return { code: 'not-your-duty', duty: 'bench-work' }
  if (out.tube.whereabouts === 'fitted')
    return { code: 'exchange-fitted', mark: out.tube.mark, position: asked.position }
  return null
}
