import Link from 'next/link'
import { ampTitle } from '@/lib/domain/amp/amp'
import type { ListedAmp } from '@/lib/store/amp'

export function CustomerAmps({ amps, customerId }: { amps: readonly ListedAmp[]; customerId: string }) {
  return (
    <section className="panel" aria-labelledby="amps">
      <div className="panel-head">
        <h2 id="amps">Amplifiers</h2>
        <Link href={`/amps/new?customer=${customerId}`}>Write down another</Link>
      </div>
      {amps.length === 0 && <p className="soft">None yet.</p>}
      <ul>
        {amps.map((amp) => (
          <li key={amp.id}>
            <Link href={`/amps/${amp.id}`}>{ampTitle(amp)}</Link>{' '}
            <span className="soft">
              {amp.socketCount} sockets noted, {amp.jobCount} {amp.jobCount === 1 ? 'job' : 'jobs'}
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}
