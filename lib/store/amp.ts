/** Amplifiers with their sheets: the amp row is the root, its sockets are saved with it. */
import {
  type Amp,
  type AmpDetails,
  type AmpSheet,
  isSameModel,
  type OutputClass,
  type ProtectionClass,
} from '@/lib/domain/amp/amp'
import type { Side, Socket, SocketBiasKind, SocketDetails, SocketRole } from '@/lib/domain/amp/socket'
import type { ScreenFeedKind } from '@/lib/domain/amp/supply-facts'
import { fold } from '@/lib/domain/fold'
import { db, type Tx } from './database'

const ampColumns = {
  id: true,
  customerId: true,
  make: true,
  model: true,
  serial: true,
  mainsVolts: true,
  protectionClass: true,
  fuse: true,
  outputClass: true,
  plateLoadOhms: true,
  note: true,
  version: true,
} as const

const socketColumns = {
  id: true,
  place: true,
  position: true,
  role: true,
  typeFitted: true,
  markFitted: true,
  matchGroup: true,
  biasKind: true,
  side: true,
  cathodeOhms: true,
  cathodeSharedBy: true,
  senseOhms: true,
  screenOhms: true,
  halfPrimaryOhms: true,
  halfSharedBy: true,
  across: true,
  depth: true,
} as const

type AmpRow = { protectionClass: string; outputClass: string } & Omit<Amp, 'protectionClass' | 'outputClass'>
type SocketRow = { role: string; biasKind: string; side: string } & Omit<Socket, 'role' | 'biasKind' | 'side'>

const amp = (row: AmpRow): Amp => ({
  ...row,
  protectionClass: row.protectionClass as ProtectionClass,
  outputClass: row.outputClass as OutputClass,
})

const socket = (row: SocketRow): Socket => ({
  ...row,
  role: row.role as SocketRole,
  biasKind: row.biasKind as SocketBiasKind,
  side: row.side as Side,
})

/** The serial is kept a second time without its dashes, as it is often typed. */
const searchText = ({ make, model, serial }: AmpDetails) =>
  `${fold(make, model, serial)} ${fold(serial).replace(/[^\p{L}\p{N}]/gu, '')}`.trim()

/** An amplifier in a list, with whose it is and how far its sheet has got. */
export type ListedAmp = Amp & { readonly ownerName: string; readonly socketCount: number; readonly jobCount: number }

const listedColumns = {
  ...ampColumns,
  customer: { select: { name: true } },
  _count: { select: { sockets: true, jobs: true } },
} as const

type ListedRow = AmpRow & { customer: { name: string }; _count: { sockets: number; jobs: number } }

const listed = ({ customer, _count, ...row }: ListedRow): ListedAmp => ({
  ...amp(row),
  ownerName: customer.name,
  socketCount: _count.sockets,
  jobCount: _count.jobs,
})

export async function findAmp(id: string, tx: Tx = db()): Promise<Amp | null> {
  const row = await tx.amp.findUnique({ where: { id }, select: ampColumns })
  return row && amp(row)
}

/** The amplifier with its sockets in chassis order. */
export async function findAmpSheet(ampId: string, tx: Tx = db()): Promise<AmpSheet | null> {
  const sockets = { orderBy: { place: 'asc' }, select: socketColumns } as const
  const row = await tx.amp.findUnique({
    where: { id: ampId },
    select: { ...ampColumns, sockets, supply: { select: { screenFeed: true } } },
  })
  if (!row) return null
  const { sockets: rows, supply, ...rest } = row
  const screenFeed = supply?.screenFeed as ScreenFeedKind | null | undefined
  return { amp: amp(rest), sockets: rows.map(socket), ...(screenFeed ? { screenFeed } : {}) }
}

/** Every word must occur in make, model or serial, or in the owner's name, phone or e-mail. */
export async function listAmps(search: string, limit = 50): Promise<ListedAmp[]> {
  const words = fold(search).split(' ').filter(Boolean)
  const AND = words.map((word) => ({
    OR: [{ search: { contains: word } }, { customer: { search: { contains: word } } }],
  }))
  const orderBy = [{ make: 'asc' }, { model: 'asc' }, { serial: 'asc' }] as const
  const rows = await db().amp.findMany({ where: { AND }, orderBy: [...orderBy], take: limit, select: listedColumns })
  return rows.map(listed)
}

export async function listAmpsOfCustomer(customerId: string): Promise<ListedAmp[]> {
  const orderBy = [{ make: 'asc' }, { model: 'asc' }] as const
  const rows = await db().amp.findMany({ where: { customerId }, orderBy: [...orderBy], select: listedColumns })
  return rows.map(listed)
}

/** Amplifiers of that make and model however they were written, those with fuller sheets first. */
export async function listAmpsOfModel(make: string, model: string): Promise<ListedAmp[]> {
  const words = fold(make)
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)
  const where = { AND: words.map((word) => ({ search: { contains: word } })) }
  const rows = await db().amp.findMany({ where, orderBy: { createdAt: 'asc' }, select: listedColumns })
  return rows
    .filter((row) => isSameModel(row, { make, model }))
    .map(listed)
    .sort((a, b) => b.socketCount - a.socketCount)
}

export async function createAmp(tx: Tx, customerId: string, details: AmpDetails): Promise<string> {
  const data = { ...details, customerId, search: searchText(details) }
  const row = await tx.amp.create({ data, select: { id: true } })
  return row.id
}

/** False when somebody saved the amplifier or its sheet since `version`. */
export async function saveAmp(tx: Tx, id: string, version: number, details: AmpDetails): Promise<boolean> {
  const data = { ...details, search: searchText(details), version: version + 1 }
  const { count } = await tx.amp.updateMany({ where: { id, version }, data })
  return count === 1
}

/** To another owner. Gives the version after it. */
export async function giveAmpTo(tx: Tx, id: string, customerId: string): Promise<number> {
  const data = { customerId, version: { increment: 1 } }
  const row = await tx.amp.update({ where: { id }, data, select: { version: true } })
  return row.version
}

/** Null id: a socket not on the sheet yet. */
export type SheetRow = { readonly id: string | null; readonly details: SocketDetails }

/**
 * Makes the sheet what `rows` say, in their order; sockets left out are removed.
 * False, with nothing written, when somebody saved since `version`.
 * A socket with readings or fittings cannot be removed: ask listUsedSockets first.
 */
export async function saveSheet(tx: Tx, ampId: string, version: number, rows: readonly SheetRow[]): Promise<boolean> {
  const { count } = await tx.amp.updateMany({ where: { id: ampId, version }, data: { version: version + 1 } })
  if (count !== 1) return false
  const kept = rows.flatMap(({ id }) => (id === null ? [] : [id]))
  await tx.socket.deleteMany({ where: { ampId, id: { notIn: kept } } })
  // Two sockets may have swapped positions, which are unique: first all of them step aside.
  for (const id of kept) await tx.socket.update({ where: { id, ampId }, data: { position: `aside ${id}` } })
  for (const [place, { id, details }] of rows.entries()) {
    if (id === null) await tx.socket.create({ data: { ...details, ampId, place } })
    else await tx.socket.update({ where: { id, ampId }, data: { ...details, place } })
  }
  return true
}

/** Part of the sheet's save: sides and layouts hang on it. */
export async function saveOutputClass(tx: Tx, ampId: string, outputClass: OutputClass): Promise<void> {
  await tx.amp.update({ where: { id: ampId }, data: { outputClass } })
}

/** What now sits in a socket. Counts as a save of the sheet. */
export async function saveFittedTube(
  tx: Tx,
  socketId: string,
  fitted: { readonly typeFitted: string; readonly markFitted: string },
): Promise<void> {
  const { ampId } = await tx.socket.update({ where: { id: socketId }, data: fitted, select: { ampId: true } })
  await tx.amp.update({ where: { id: ampId }, data: { version: { increment: 1 } } })
}

export type SocketUse = {
  readonly socketId: string
  readonly position: string
  readonly readings: number
  readonly fittings: number
}

/** Sockets whose past must not be lost: they have readings, or a tube was fitted into them. */
export async function listUsedSockets(ampId: string, tx: Tx = db()): Promise<SocketUse[]> {
  const where = { ampId, OR: [{ readings: { some: {} } }, { fittings: { some: {} } }] }
  const select = { id: true, position: true, _count: { select: { readings: true, fittings: true } } } as const
  const rows = await tx.socket.findMany({ where, orderBy: { place: 'asc' }, select })
  return rows.map(({ id, position, _count }) => ({ socketId: id, position, ..._count }))
}
