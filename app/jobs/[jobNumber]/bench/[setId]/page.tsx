import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { requireUser } from '@/lib/session'
import { findReadingSet } from '@/lib/store/reading-set'
import { requireHead } from '../../require-head'
import { ReadingsSheet } from '../readings-sheet'

export const metadata: Metadata = { title: 'Correct readings' }

export default async function CorrectReadingsPage({ params }: PageProps<'/jobs/[jobNumber]/bench/[setId]'>) {
  const { actor, shop } = await requireUser()
  const { job } = await requireHead(params)
  const set = await findReadingSet((await params).setId)
  if (!set || set.jobId !== job.id) notFound()
  return (
    <>
      <h2>Correct the readings {set.phase === 'before' ? 'before' : 'after'} the work</h2>
      <ReadingsSheet job={job} shop={shop} actor={actor} set={set} phase={set.phase} />
    </>
  )
}
