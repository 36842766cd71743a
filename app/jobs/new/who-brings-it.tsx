/** Customers and amplifiers that fit what was typed, each a way into the form. */
import Link from 'next/link'
import { ampTitle } from '@/lib/domain/amp/amp'
import type { Customer } from '@/lib/domain/customer/customer'
import type { ListedAmp } from '@/lib/store/amp'
import { LiveSearch } from './live-search'
import styles from './who-brings-it.module.css'

type Props = {
  readonly who: string
  readonly customers: readonly { readonly customer: Customer; readonly amps: readonly ListedAmp[] }[]
  readonly amps: readonly ListedAmp[]
}

const form = (query: Record<string, string>) => `/jobs/new?${new URLSearchParams(query)}`

export function WhoBringsIt({ who, customers, amps }: Props) {
  return (
    <div className="panel stack">
      <LiveSearch
        action="/jobs/new"
        name="who"
        value={who}
        label="Part of a name, phone, e-mail, or the amplifier's serial"
      >
        {/* A button of the search itself: what is typed becomes the new customer's name, phone or e-mail. */}
        <button type="submit" className="button" name="customer" value="new" style={{ alignSelf: 'end' }}>
          New customer, new amplifier
        </button>
      </LiveSearch>
      {customers.map(({ customer, amps: own }) => (
        <article key={customer.id} className={styles.found}>
          <p>
            <strong>{customer.name}</strong>{' '}
            <span className="soft">{[customer.phone, customer.email].filter(Boolean).join(' · ')}</span>
          </p>
          <div className="row">
            {own.map((amp) => (
              <Link key={amp.id} className="button quiet" href={form({ customer: customer.id, amp: amp.id })}>
                {ampTitle(amp)}
              </Link>
            ))}
            <Link className="button quiet" href={form({ customer: customer.id, amp: 'new' })}>
              Another amplifier
            </Link>
          </div>
        </article>
      ))}
      {amps.map((amp) => (
        <article key={amp.id} className={styles.found}>
          <p>
            <strong>{ampTitle(amp)}</strong> <span className="soft">of {amp.ownerName}</span>
          </p>
          <div className="row">
            <Link className="button quiet" href={form({ customer: amp.customerId, amp: amp.id })}>
              Brought by {amp.ownerName}
            </Link>
            <Link className="button quiet" href={form({ customer: 'new', amp: amp.id })}>
              It has a new owner
            </Link>
          </div>
        </article>
      ))}
      {who !== '' && customers.length === 0 && amps.length === 0 && (
        <p className="soft">Nobody and nothing found for “{who}”.</p>
      )}
    </div>
  )
}
