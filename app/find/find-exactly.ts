/** What is typed may be the very number or mark of one thing: then that is where to go. */
import { readJobNumber } from '@/lib/domain/job/job-number'
import { readMark } from '@/lib/domain/stock/tube-mark'
import { isJob } from '@/lib/store/find'
import { findTubeByMark } from '@/lib/store/tube'

export async function findExactly(typed: string): Promise<string | null> {
  const number = readJobNumber(typed)
  if (number.ok && (await isJob(number.value))) return `/jobs/${number.value}`
  const mark = readMark(typed)
  const tube = mark && (await findTubeByMark(mark))
  return tube ? `/stock/${tube.id}` : null
}

/** A number said over the telephone that cannot be right is worth a word. */
export function jobNumberRemark(typed: string): string | null {
  const written = typed.trim()
  if (!/^\d{4,9}[\s-]\d$/.test(written)) return null
  const number = readJobNumber(written)
  if (number.ok) return `There is no job ${number.value}.`
  return `${written} cannot be a job number: its last digit does not fit the others. One digit may have been misheard or swapped.`
}
