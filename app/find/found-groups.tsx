import Link from 'next/link'
import { JobTable } from '@/app/_components/job-table'
import { StockTable } from '@/app/stock/stock-table'
import { cardAddress } from '@/app/types/card-address'
import { dayInZone } from '@/lib/domain/calendar'
import type { Customer } from '@/lib/domain/customer/customer'
import type { JobLine } from '@/lib/domain/job/job'
import type { Shop } from '@/lib/domain/shop/shop'
import type { StockedTube } from '@/lib/domain/stock/tube'
import { designationsOf, type FoundType } from '@/lib/domain/tube/type-search'
import { capital, wordsFor } from '@/lib/domain/words'
import type { ListedAmp } from '@/lib/store/amp'

export type Found = {
  readonly jobs: readonly JobLine[]
  readonly customers: readonly Customer[]
  readonly amps: readonly ListedAmp[]
  readonly tubes: readonly StockedTube[]
  readonly types: readonly FoundType[]
}

type Props = { readonly found: Found; readonly shop: Shop; readonly now: Date }

/** Groups with nothing in them are left out. */
export function FoundGroups({ found: { jobs, customers, amps, tubes, types }, shop, now }: Props) {
  const words = wordsFor(shop.words)
  return (
    <>
      <Group title="Jobs" count={jobs.length}>
        <JobTable jobs={jobs} today={dayInZone(now, shop.timeZone)} locale={words.locale} empty="" withState />
      </Group>
      <Group title="Customers" count={customers.length}>
        <CustomerTable customers={customers} />
      </Group>
      <Group title="Amplifiers" count={amps.length}>
        <AmpTable amps={amps} />
      </Group>
      <Group title={capital(words.tubes)} count={tubes.length}>
        <StockTable tubes={tubes} shop={shop} now={now} />
      </Group>
      <Group title={`${capital(words.tube)} types`} count={types.length}>
        <TypeTable types={types} />
      </Group>
    </>
  )
}

function Group({ title, count, children }: { title: string; count: number; children: React.ReactNode }) {
  if (count === 0) return null
  return (
    <section className="panel">
      <div className="panel-head">
        <h2>{title}</h2>
        <span className="soft">{count} found</span>
      </div>
      <div className="table-scroll">{children}</div>
    </section>
  )
}

function CustomerTable({ customers }: { customers: readonly Customer[] }) {
  return (
    <table>
      <thead>
        <tr>
          <th>Name</th>
          <th>Phone</th>
          <th>E-mail</th>
        </tr>
      </thead>
      <tbody>
        {customers.map(({ id, name, phone, email }) => (
          <tr key={id}>
            <td>
              <Link href={`/customers/${id}`}>{name}</Link>
            </td>
            <td>{phone}</td>
            <td>{email}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function TypeTable({ types }: { types: readonly FoundType[] }) {
  return (
    <table>
      <thead>
        <tr>
          <th>Type</th>
          <th>Class</th>
          <th>Also</th>
        </tr>
      </thead>
      <tbody>
        {types.map(({ type, numbers }) => (
          <tr key={type.id}>
            <td>
              <Link href={cardAddress(type.id)}>{designationsOf(type).join(', ')}</Link>
            </td>
            <td>{type.className}</td>
            <td>{numbers.join(', ')}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function AmpTable({ amps }: { amps: readonly ListedAmp[] }) {
  return (
    <table>
      <thead>
        <tr>
          <th>Amplifier</th>
          <th>Serial</th>
          <th>Owner</th>
        </tr>
      </thead>
      <tbody>
        {amps.map(({ id, make, model, serial, ownerName }) => (
          <tr key={id}>
            <td>
              <Link href={`/amps/${id}`}>{`${make} ${model}`.trim()}</Link>
            </td>
            <td>{serial}</td>
            <td>{ownerName}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
