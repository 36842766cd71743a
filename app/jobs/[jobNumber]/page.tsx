import type { Metadata } from 'next'
import Link from 'next/link'
import { startKey } from '@/app/_components/form/after-save'
import { HistoryList } from '@/app/_components/history-list'
import { PaperList } from '@/app/_components/paper-list'
import { requireUser } from '@/lib/session'
import { listJobHistory } from '@/lib/store/history'
import { listPapers } from '@/lib/store/paper'
import { JobChassis } from './job-chassis'
import { JobEntries } from './job-entries'
import { JobMoves } from './job-moves'
import { latestBench } from './latest-bench'
import { requireHead } from './require-head'

export const metadata: Metadata = { title: 'Job' }

export default async function JobPage({ params, searchParams }: PageProps<'/jobs/[jobNumber]'>) {
  const { shop } = await requireUser()
  const head = await requireHead(params)
  const { job } = head
  const [bench, papers, history] = await Promise.all([
    latestBench(job, shop),
    listPapers(job.id),
    listJobHistory(job.id),
  ])
  const query = await searchParams
  const [taken, formKey] = [query.taken, startKey(query)]
  const receipt = papers.find(({ kind }) => kind === 'receipt')
  return (
    <>
      {taken === 'in' && (
        <p className="form-message" data-status="saved" role="status">
          Taken in as job <strong>{job.number}</strong>.{' '}
          {receipt && <a href={`/papers/${receipt.id}`}>Print the receipt</a>}
        </p>
      )}
      {bench.sheet.sockets.length === 0 ? (
        <p className="form-message">
          No socket of this amplifier is noted yet. <Link href={`/jobs/${job.number}/amplifier`}>Note them</Link>, and
          the chassis is drawn here.
        </p>
      ) : (
        <JobChassis bench={bench} shop={shop} jobNumber={job.number} />
      )}
      <div className="columns">
        <div className="stack">
          <JobEntries head={head} shop={shop} formKey={formKey} />
          <JobMoves job={job} shop={shop} formKey={formKey} />
          <PaperList papers={papers} shop={shop} />
        </div>
        <HistoryList history={history} shop={shop} />
      </div>
    </>
  )
}
