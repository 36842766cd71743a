import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { startKey } from '@/app/_components/form/after-save'
import { HistoryList } from '@/app/_components/history-list'
import { Shell } from '@/app/_components/shell/shell'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { findAmpSheet, listAmpsOfModel } from '@/lib/store/amp'
import { findSupply } from '@/lib/store/amp-supply'
import { findCustomer } from '@/lib/store/customer'
import { listHistoryOf } from '@/lib/store/history'
import { listJobsOf } from '@/lib/store/job'
import { findLatestReadingsOfAmp } from '@/lib/store/reading-set'
import { AmpForm } from '../amp-form'
import { ampValues } from '../amp-schema'
import { AmpHead } from './amp-head'
import { AmpJobs } from './amp-jobs'
import { ChassisPanel } from './chassis-panel'
import { SupplyPanel } from './supply-panel'

export const metadata: Metadata = { title: 'Amplifier' }

export default async function AmpPage({ params, searchParams }: PageProps<'/amps/[ampId]'>) {
  const { actor, shop } = await requireUser()
  const { ampId } = await params
  const sheet = await findAmpSheet(ampId)
  if (!sheet) notFound()
  const { amp } = sheet
  const words = wordsFor(shop.words)
  const [owner, jobs, history, sameModel, supply, readings] = await Promise.all([
    findCustomer(amp.customerId),
    listJobsOf({ ampId }),
    listHistoryOf('amp', ampId),
    listAmpsOfModel(amp.make, amp.model),
    findSupply(ampId),
    findLatestReadingsOfAmp(ampId),
  ])
  const read = jobs.find(({ id }) => id === readings?.jobId)
  const others = sameModel.filter(({ id }) => id !== ampId)
  return (
    <Shell shop={shop} actor={actor}>
      <AmpHead amp={amp} owner={owner} others={others} />
      <ChassisPanel sheet={sheet} others={others} words={words} catalogue={shop} />
      <SupplyPanel ampId={ampId} facts={supply} words={words} readOnJob={read?.number ?? null} />
      <div className="columns">
        <div className="stack">
          <AmpJobs amp={amp} jobs={jobs} shop={shop} />
          <section className="panel" aria-labelledby="amplifier">
            <h2 id="amplifier">The amplifier</h2>
            <AmpForm key={startKey(await searchParams)} values={ampValues(amp)} words={words} />
          </section>
        </div>
        <HistoryList history={history} shop={shop} />
      </div>
    </Shell>
  )
}
