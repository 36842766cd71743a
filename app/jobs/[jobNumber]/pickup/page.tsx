import type { Metadata } from 'next'
import { PaperList } from '@/app/_components/paper-list'
import { isClosed } from '@/lib/domain/job/job-state'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listPapers } from '@/lib/store/paper'
import { findAcceptedQuote } from '@/lib/store/quote'
import { jobAccount } from '@/lib/workflow/handover/job-account'
import { ampState } from '@/lib/workflow/work/safety-state'
import { requireHead } from '../require-head'
import { GoesBack } from './goes-back'
import { Leaving } from './leaving'
import { MoneyPanel } from './money'
import { partsLeaving } from './parts-leaving'

export const metadata: Metadata = { title: 'Pickup' }

export default async function PickupPage({ params }: PageProps<'/jobs/[jobNumber]/pickup'>) {
  const { shop } = await requireUser()
  const head = await requireHead(params)
  const { job } = head
  const [state, quote, books, papers] = await Promise.all([
    ampState(job),
    findAcceptedQuote(job.id),
    jobAccount(job.id),
    listPapers(job.id, 'pickup-sheet'),
  ])
  const closed = isClosed(job.state)
  const parts = await partsLeaving(job.id, quote)
  return (
    <>
      {papers.length > 0 && <PaperList papers={papers} shop={shop} />}
      <div className="columns even">
        <GoesBack job={job} {...state} words={wordsFor(shop.words)} open={!closed} />
        <MoneyPanel
          books={books}
          quote={job.state === 'returned-unrepaired' ? null : quote}
          jobNumber={job.number}
          shop={shop}
          closed={closed}
        />
      </div>
      <Leaving head={head} shop={shop} fittings={state.fittings} parts={parts} />
    </>
  )
}
