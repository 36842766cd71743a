import 'server-only'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { findJobHead, type JobHead } from '@/lib/store/job-head'

/** One look-up for layout and page together. */
export const findHead = cache(findJobHead)

export async function requireHead(params: Promise<{ jobNumber: string }>): Promise<JobHead> {
  const { jobNumber } = await params
  return (await findHead(decodeURIComponent(jobNumber))) ?? notFound()
}
