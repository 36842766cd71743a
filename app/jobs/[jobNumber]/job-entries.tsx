/** What was written down at the counter, to read and to correct. */
import Link from 'next/link'
import { ampTitle } from '@/lib/domain/amp/amp'
import { formatDay, formatInstant } from '@/lib/domain/calendar'
import { isClosed } from '@/lib/domain/job/job-state'
import { formatMoney } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { capital, wordsFor } from '@/lib/domain/words'
import type { JobHead } from '@/lib/store/job-head'
import { jobValues } from '../job-schema'
import { JobForm } from './job-form'

export function JobEntries({ head, shop, formKey }: { head: JobHead; shop: Shop; formKey: string }) {
  const { job, customer, amp } = head
  const words = wordsFor(shop.words)
  const limit =
    job.spendingLimit === null
      ? 'none agreed: ask before every amount'
      : formatMoney(job.spendingLimit, shop.currency, words.locale)
  return (
    <section className="panel" aria-labelledby="counter">
      <h2 id="counter">At the counter</h2>
      <dl className="facts">
        <dt>Fault</dt>
        <dd>“{job.fault}”</dd>
        {job.faultSettings && <Fact name="Shows at" value={job.faultSettings} />}
        <dt>Amplifier</dt>
        <dd>
          <Link href={`/amps/${amp.id}`}>{ampTitle(amp)}</Link>
        </dd>
        <Fact
          name={capital(words.mains)}
          value={`${amp.mainsVolts} V, class ${amp.protectionClass}, fuse ${amp.fuse || 'not noted'}`}
        />
        <dt>Customer</dt>
        <dd>
          <Link href={`/customers/${customer.id}`}>{customer.name}</Link>
          {[customer.phone, customer.email].filter(Boolean).map((way) => `\n${way}`)}
          {`\nprefers ${customer.preferredContact}`}
        </dd>
        <Fact
          name="Items left"
          value={job.items.map(({ count, label }) => `${count} × ${label}`).join('\n') || 'none'}
        />
        <Fact name="Spending limit" value={limit} />
        <Fact name="Promised" value={job.promisedOn ? formatDay(job.promisedOn, words.locale) : 'no day'} />
        <Fact name="Old parts" value={job.oldPartsBack ? 'go back to the customer' : 'stay here'} />
        <Fact
          name="Taken in"
          value={`${formatInstant(job.receivedAt, shop.timeZone, words.locale)}, ${job.takenInBy}`}
        />
      </dl>
      {!isClosed(job.state) && (
        <JobForm key={formKey} values={jobValues(job, shop.currency)} currency={shop.currency} />
      )}
    </section>
  )
}

const Fact = ({ name, value }: { name: string; value: string }) => (
  <>
    <dt>{name}</dt>
    <dd>{value}</dd>
  </>
)
