import Link from 'next/link'
import type { SupplyFacts } from '@/lib/domain/amp/supply-facts'
import type { Words } from '@/lib/domain/words'
import { SupplyTable } from '../supply-table'

export function SupplyPanel({ ampId, facts, words }: { ampId: string; facts: SupplyFacts; words: Words }) {
  return (
    <section className="panel" aria-labelledby="supply">
      <div className="panel-head">
        <h2 id="supply">Supply and bias</h2>
        <span className="row">
          <Link href={`/amps/${ampId}/supply`}>Write down supply and bias</Link>
          <Link href={`/amps/${ampId}/substitutes`}>What else may go into its sockets</Link>
        </span>
      </div>
      <SupplyTable facts={facts} words={words} />
    </section>
  )
}
