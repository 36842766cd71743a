import Link from 'next/link'
import { SearchBar } from '@/app/_components/search-bar'
import type { Customer } from '@/lib/domain/customer/customer'

/** An amplifier belongs to somebody: first whose it is. */
export function ChooseOwner({ customers, search }: { customers: readonly Customer[]; search: string }) {
  return (
    <section className="panel stack" aria-labelledby="whose">
      <div className="panel-head">
        <h2 id="whose">Whose is it?</h2>
        <Link href="/customers/new">Somebody new</Link>
      </div>
      <SearchBar action="/amps/new" value={search} label="Part of a name, phone or e-mail" />
      {customers.length === 0 && <p className="soft">Nobody found{search && ` for “${search}”`}.</p>}
      <ul className="stack" style={{ listStyle: 'none', margin: 0, padding: 0, gap: '0.5rem' }}>
        {customers.map(({ id, name, phone, email }) => (
          <li key={id} className="row">
            <Link className="button quiet" href={`/amps/new?customer=${id}`}>
              {name}
            </Link>
            <span className="soft">{[phone, email].filter(Boolean).join(' · ')}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}
