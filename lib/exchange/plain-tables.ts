/** The other tables of the shop: lots, parts, customers, amplifiers, jobs. */
import type { Money } from '../domain/money'
import type { StockedPart } from '../domain/stock/part'
import { conditionWord } from '../domain/stock/tube'
import type { TubeLot } from '../domain/stock/tube-lot'
import { amountCell } from './tube-table'
import type { Cell, TableColumn } from './write-table'

const text = <Row>(heading: string, cell: (row: Row) => Cell): TableColumn<Row> => ({ heading, kind: 'text', cell })
const plain = <Row>(heading: string, cell: (row: Row) => Cell): TableColumn<Row> => ({ heading, kind: 'plain', cell })

export const lotTable = (digits: number): TableColumn<TubeLot>[] => [
  text('Type', ({ designation }) => designation),
  text('Condition', ({ condition }) => conditionWord(condition)),
  plain('Count', ({ count }) => count),
  plain('Price', ({ price }) => amountCell(price, digits)),
  plain('Paid', ({ cost }) => amountCell(cost, digits)),
  text('Location', ({ location }) => location),
  text('Note', ({ note }) => note),
]

export const partTable = (digits: number): TableColumn<StockedPart>[] => [
  text('Name', ({ name }) => name),
  text('Kind', ({ kind }) => kind),
  text('Value', ({ value }) => value),
  plain('Count', ({ count }) => count),
  plain('Set aside for jobs', ({ drawer }) => drawer.aside),
  plain('Free', ({ drawer }) => drawer.free),
  plain('Short for jobs', ({ drawer }) => drawer.short),
  plain('Reorder at', ({ reorderLevel }) => reorderLevel),
  plain('Price', ({ price }) => amountCell(price, digits)),
  plain('Paid', ({ cost }) => amountCell(cost, digits)),
  text('Location', ({ location }) => location),
]

export type CustomerRow = {
  readonly name: string
  readonly phone: string
  readonly email: string
  readonly address: string
  readonly preferredContact: string
  readonly note: string
}

/** A phone number that begins with + is a text like any other: it gets its apostrophe. */
export const customerTable: TableColumn<CustomerRow>[] = [
  text('Name', ({ name }) => name),
  text('Phone', ({ phone }) => phone),
  text('E-mail', ({ email }) => email),
  text('Postal address', ({ address }) => address),
  text('Preferred contact', ({ preferredContact }) => preferredContact),
  text('Note', ({ note }) => note),
]

export type AmpRow = {
  readonly owner: string
  readonly make: string
  readonly model: string
  readonly serial: string
  readonly mainsVolts: number
  readonly protectionClass: string
  readonly fuse: string
  readonly outputClass: string
  readonly plateLoadOhms: number | null
  readonly sockets: string
  readonly note: string
}

export const ampTable: TableColumn<AmpRow>[] = [
  text('Owner', ({ owner }) => owner),
  text('Make', ({ make }) => make),
  text('Model', ({ model }) => model),
  text('Serial', ({ serial }) => serial),
  plain('Mains, V', ({ mainsVolts }) => mainsVolts),
  text('Protection class', ({ protectionClass }) => protectionClass),
  text('Fuse', ({ fuse }) => fuse),
  text('Output', ({ outputClass }) => outputClass),
  plain('Plate load, ohm', ({ plateLoadOhms }) => plateLoadOhms),
  text('Sockets', ({ sockets }) => sockets),
  text('Note', ({ note }) => note),
]

export type JobRow = {
  readonly number: string
  readonly customer: string
  readonly amp: string
  readonly serial: string
  readonly state: string
  /** Days in the shop's zone. */
  readonly receivedOn: string
  readonly promisedOn: string | null
  readonly collectedOn: string | null
  readonly fault: string
  readonly findings: string
  readonly spendingLimit: Money | null
  readonly paid: Money
}

export const jobTable = (digits: number): TableColumn<JobRow>[] => [
  plain('Job', ({ number }) => number),
  text('Customer', ({ customer }) => customer),
  text('Amplifier', ({ amp }) => amp),
  text('Serial', ({ serial }) => serial),
  text('State', ({ state }) => state),
  plain('Received on', ({ receivedOn }) => receivedOn),
  plain('Promised on', ({ promisedOn }) => promisedOn),
  plain('Collected on', ({ collectedOn }) => collectedOn),
  text('Fault', ({ fault }) => fault),
  text('Findings', ({ findings }) => findings),
  plain('Spending limit', ({ spendingLimit }) => amountCell(spendingLimit, digits)),
  plain('Paid', ({ paid }) => amountCell(paid, digits)),
]
