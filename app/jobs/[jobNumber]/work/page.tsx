import type { Metadata } from 'next'
import { BenchCautions } from '@/app/_components/bench/bench-cautions'
import { PaperList } from '@/app/_components/paper-list'
import { mayDo } from '@/lib/domain/person/role'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listPapers } from '@/lib/store/paper'
import { findAcceptedQuote, findLatestQuote } from '@/lib/store/quote'
import { openToWork } from '@/lib/workflow/work/do-work'
import { ampState } from '@/lib/workflow/work/safety-state'
import { partState } from '../part-state'
import { requireHead } from '../require-head'
import { ExchangedNote } from '../tubes/exchange/exchanged-note'
import { FinishWork } from './finish-work'
import { OrderedLines } from './ordered-lines'
import { OrderedQuote } from './ordered-quote'
import { PartsLeftOver } from './parts-left-over'
import { tubeOrders } from './tube-orders'
import { TubesToFit } from './tubes-to-fit'

export const metadata: Metadata = { title: 'Work order' }

export default async function WorkPage({ params, searchParams }: PageProps<'/jobs/[jobNumber]/work'>) {
  const { actor, shop } = await requireUser()
  const { job } = await requireHead(params)
  const [accepted, latest, state, papers] = await Promise.all([
    findAcceptedQuote(job.id),
    findLatestQuote(job.id),
    ampState(job),
    listPapers(job.id, 'work-order'),
  ])
  const [orders, parts] = await Promise.all([tubeOrders(accepted, state, job), partState(job.id, accepted)])
  const open = openToWork(job.state)
  const may = open && mayDo(actor, 'bench-work')
  return (
    <>
      <OrderedQuote accepted={accepted} latest={latest} job={job} shop={shop} />
      <BenchCautions words={wordsFor(shop.words)} />
      <ExchangedNote query={await searchParams} quote={accepted} jobNumber={job.number} work />
      <TubesToFit orders={orders} sheet={state.sheet} jobNumber={job.number} shop={shop} may={may} />
      <div className="columns">
        <div className="stack">
          <OrderedLines quote={accepted} jobNumber={job.number} shop={shop} may={may} standings={parts.standings} />
          <PartsLeftOver leftOver={parts.leftOver} jobNumber={job.number} may={may} />
        </div>
        <div className="stack">
          <FinishWork job={job} quote={accepted} orders={orders} actor={actor} shop={shop} />
          <PaperList papers={papers} shop={shop} />
        </div>
      </div>
    </>
  )
}
