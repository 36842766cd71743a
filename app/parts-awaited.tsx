/** Jobs whose accepted quote needs more of a part than its drawer holds for them. */
import Link from 'next/link'
import { shortfalls } from '@/lib/domain/stock/drawer'
import { partName, type StockedPart } from '@/lib/domain/stock/part'

export function PartsAwaited({ parts }: { parts: readonly StockedPart[] }) {
  const awaited = parts.flatMap((part) => shortfalls(part.drawer).map((fall) => ({ ...fall, part })))
  if (awaited.length === 0) return null
  const inTurn = awaited.toSorted((a, b) => (a.jobNumber < b.jobNumber ? -1 : 1))
  return (
    <section className="caution" aria-labelledby="parts-awaited">
      <h2 id="parts-awaited">Parts awaited</h2>
      <ul>
        {inTurn.map(({ jobId, jobNumber, pieces, short, part }) => (
          <li key={`${jobId} ${part.id}`}>
            <Link href={`/jobs/${jobNumber}/work`}>Job {jobNumber}</Link>: {pieces} needed, {pieces - short} set aside:
            order {short} × <Link href={`/stock/parts/${part.id}`}>{partName(part)}</Link>
          </li>
        ))}
      </ul>
    </section>
  )
}
