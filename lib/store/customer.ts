import type { Customer, CustomerDetails } from '@/lib/domain/customer/customer'
import { digitsOf, fold } from '@/lib/domain/fold'
import { db, type Tx } from './database'

const columns = {
  id: true,
  name: true,
  phone: true,
  email: true,
  address: true,
  preferredContact: true,
  note: true,
  version: true,
} as const

type Row = { preferredContact: string } & Omit<Customer, 'preferredContact'>

const customer = (row: Row): Customer => ({
  ...row,
  preferredContact: row.preferredContact as Customer['preferredContact'],
})

const searchText = (details: CustomerDetails) =>
  `${fold(details.name, details.email, details.phone)} ${digitsOf(details.phone)}`

export async function findCustomer(id: string, tx: Tx = db()): Promise<Customer | null> {
  const row = await tx.customer.findUnique({ where: { id }, select: columns })
  return row && customer(row)
}

/** Every word must occur in name, phone or e-mail; digits match the phone whatever its spacing. */
export async function listCustomers(search: string, limit = 50): Promise<Customer[]> {
  const phone = digitsOf(search)
  const words = /^[\d\s()+./-]+$/.test(search) && phone.length > 2 ? [phone] : fold(search).split(' ')
  const where = { AND: words.filter(Boolean).map((word) => ({ search: { contains: word } })) }
  const rows = await db().customer.findMany({ where, orderBy: { name: 'asc' }, take: limit, select: columns })
  return rows.map(customer)
}

export async function createCustomer(tx: Tx, details: CustomerDetails): Promise<string> {
  const row = await tx.customer.create({ data: { ...details, search: searchText(details) }, select: { id: true } })
  return row.id
}

/** False when somebody saved since `version`. */
export async function saveCustomer(tx: Tx, id: string, version: number, details: CustomerDetails): Promise<boolean> {
  const data = { ...details, search: searchText(details), version: version + 1 }
  const { count } = await tx.customer.updateMany({ where: { id, version }, data })
  return count === 1
}
