/** Where a part lies, or that its drawer does not hold enough. */
import type { PartStanding } from '@/lib/domain/stock/part-standing'

export function PartNote({ standing }: { standing: PartStanding | undefined }) {
  if (!standing) return null
  const { short, location } = standing
  if (short === '') return <span className="soft small"> {location || 'in its drawer'}</span>
  return (
    <>
      {' '}
      <span className="tag" data-tone="warn" data-shape="!">
        {short}
      </span>
    </>
  )
}
