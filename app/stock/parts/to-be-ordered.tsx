/** Parts that jobs wait for, or that are free in too small a number. */
import Link from 'next/link'
import { shortfalls } from '@/lib/domain/stock/drawer'
import { isToReorder, partName, type StockedPart } from '@/lib/domain/stock/part'

export function ToBeOrdered({ parts }: { parts: readonly StockedPart[] }) {
  const low = parts.filter((part) => part.drawer.short > 0 || isToReorder(part))
  if (low.length === 0) return null
  return (
    <section className="caution">
      <h2>To be ordered</h2>
      <ul>
        {low.map((part) => (
          <li key={part.id}>
            <Link href={`/stock/parts/${part.id}`}>{partName(part)}</Link>: {whyText(part)}
          </li>
        ))}
      </ul>
    </section>
  )
}

function whyText(part: StockedPart): string {
  const { drawer, reorderLevel } = part
  const level = isToReorder(part) ? [`${drawer.free} free, reorder at ${reorderLevel}`] : []
  const jobs = shortfalls(drawer).map(({ jobNumber, short }) => `${short} short for job ${jobNumber}`)
  return [...jobs, ...level].join('; ')
}
