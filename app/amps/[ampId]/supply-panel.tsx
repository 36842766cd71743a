import Link from 'next/link'
import type { SupplyFacts } from '@/lib/domain/amp/supply-facts'
import type { Words } from '@/lib/domain/words'
import { SupplyTable } from '../supply-table'

type Props = {
  readonly ampId: string
  readonly facts: SupplyFacts
  readonly words: Words
  /** Number of the job with its latest readings; null: never read. */
  readonly readOnJob: string | null
}

export function SupplyPanel({ ampId, facts, words, readOnJob }: Props) {
  return (
    <section className="panel" aria-labelledby="supply">
      <div className="panel-head">
        <h2 id="supply">Supply and bias</h2>
        <span className="row">
          <Link href={`/amps/${ampId}/supply`}>Write down supply and bias</Link>
          {readOnJob && <Link href={`/jobs/${readOnJob}/bench#what-if`}>What if … on its last readings</Link>}
          <Link href={`/amps/${ampId}/substitutes`}>What else may go into its sockets</Link>
        </span>
      </div>
      <SupplyTable facts={facts} words={words} />
    </section>
  )
}
