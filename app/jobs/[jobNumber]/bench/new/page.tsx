import type { Metadata } from 'next'
import { BenchCautions } from '@/app/_components/bench/bench-cautions'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { requireHead } from '../../require-head'
import { ReadingsSheet } from '../readings-sheet'

export const metadata: Metadata = { title: 'Readings' }

export default async function NewReadingsPage({ params, searchParams }: PageProps<'/jobs/[jobNumber]/bench/new'>) {
  const { actor, shop } = await requireUser()
  const { job } = await requireHead(params)
  const { phase } = await searchParams
  return (
    <>
      <h2>{phase === 'after' ? 'Readings after the work' : 'Readings before the work'}</h2>
      <BenchCautions words={wordsFor(shop.words)} />
      <ReadingsSheet job={job} shop={shop} actor={actor} set={null} phase={phase === 'after' ? 'after' : 'before'} />
    </>
  )
}
