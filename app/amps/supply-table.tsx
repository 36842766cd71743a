/** What is known of the supply, as a list; nothing where nothing is. */
import { Fragment } from 'react'
import type { SupplyFacts } from '@/lib/domain/amp/supply-facts'
import { supplyShown } from '@/lib/domain/amp/supply-shown'
import type { Words } from '@/lib/domain/words'

export function SupplyTable({ facts, words }: { facts: SupplyFacts; words: Words }) {
  const known = [...supplyShown(facts, words)].filter(([, text]) => text !== '')
  if (known.length === 0) return <p className="soft">Nothing of the supply is written down yet.</p>
  return (
    <dl className="facts">
      {known.map(([label, text]) => (
        <Fragment key={label}>
          <dt>{label}</dt>
          <dd>{text}</dd>
        </Fragment>
      ))}
    </dl>
  )
}
