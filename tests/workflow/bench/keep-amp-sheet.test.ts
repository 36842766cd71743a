import { describe, expect, it } from 'vitest'
import type { SocketDetails } from '@/lib/domain/amp/socket'
import { plainSocket } from '@/lib/domain/amp/socket'
import { findAmpSheet } from '@/lib/store/amp'
import { db } from '@/lib/store/database'
import { listHistoryOf } from '@/lib/store/history'
import { keepAmpSheet, type SheetSocket } from '@/lib/workflow/bench/keep-amp-sheet'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { ampOnFile, cathodePair, outputSocket } from '@/tests/support/amps'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, NOW } from '@/tests/support/person-at-work'

freshDatabase()

const SHOP = { timeZone: 'UTC', words: 'UK' } as const
const asNew = (sockets: readonly SocketDetails[]): SheetSocket[] => sockets.map((socket) => ({ ...socket, id: null }))

const keep = (ampId: string, version: number, sockets: readonly SheetSocket[], by = 'Ines') =>
  keepAmpSheet(atBench(by), { ampId, version, outputClass: 'push-pull', sockets })

async function ampWithSheet() {
  const ampId = await ampOnFile()
  const made = await keep(ampId, 1, asNew(cathodePair()))
  if (!made.ok) throw new Error(made.fault.code)
  return ampId
}

async function sheetOf(ampId: string) {
  const sheet = await findAmpSheet(ampId)
  if (!sheet) throw new Error('no sheet')
  return { version: sheet.amp.version, sockets: sheet.sockets.map(({ place: _place, ...socket }) => socket) }
}

/** Gives a socket a past, as the bench and the work order do. */
async function readAndFit(ampId: string, socketId: string, what: { readings?: boolean; fitting?: boolean }) {
  const amp = await db().amp.findUniqueOrThrow({ where: { id: ampId } })
  const job = await db().job.create({
    data: {
      number: `${socketId.slice(-6)}-${what.fitting ? 'f' : 'r'}`,
      customerId: amp.customerId,
      ampId,
      state: 'on-bench',
      fault: 'hum',
      takenInById: 'x',
      takenInBy: 'Odo',
      receivedAt: NOW,
      stateSince: NOW,
    },
  })
  if (what.fitting)
    await db().fitting.create({ data: { socketId, jobId: job.id, text: '6V6GT', fittedAt: NOW, fittedBy: 'Ines' } })
  if (!what.readings) return
  const instrument = await db().instrument.create({ data: { name: 'Meter 1', kind: 'multimeter' } })
  await db().readingSet.create({
    data: {
      jobId: job.id,
      phase: 'before',
      takenAt: NOW,
      takenBy: 'Ines',
      instrumentId: instrument.id,
      wallVolts: 231,
      warmupMinutes: 20,
      signalState: 'no signal',
      readings: { create: { socketId, method: 'cathode-bias', plateVolts: 330 } },
    },
  })
}

describe('a sheet kept', () => {
  it('has its sockets in chassis order and counts one save of the amplifier', async () => {
    const { version, sockets } = await sheetOf(await ampWithSheet())
    expect(version).toBe(2)
    expect(sockets.map(({ id: _id, ...details }) => details)).toEqual(cathodePair())
  })

  it('tells the history every value with its unit', async () => {
    const [entry] = await listHistoryOf('amp', await ampWithSheet())
    expect(entry).toMatchObject({ did: 'Sheet saved', person: 'Ines' })
    expect(entry?.changes).toContainEqual({ label: 'V3 cathode resistor', from: '', to: '250 Ω' })
    expect(entry?.changes).toContainEqual({ label: 'Order of sockets', from: '', to: 'V1, V2, V3, V4, V5' })
  })

  it('lets two sockets swap positions, and keeps each its own row', async () => {
    const ampId = await ampWithSheet()
    const { sockets } = await sheetOf(ampId)
    const names: Record<string, string> = { V3: 'V4', V4: 'V3' }
    const swapped = sockets.map((socket) => ({ ...socket, position: names[socket.position] ?? socket.position }))
    expect((await keep(ampId, 2, swapped)).ok).toBe(true)
    const after = (await sheetOf(ampId)).sockets
    expect(after.map(({ position }) => position)).toEqual(['V1', 'V2', 'V4', 'V3', 'V5'])
    expect(after.map(({ id }) => id)).toEqual(sockets.map(({ id }) => id))
  })

  it('may reorder, add and take out sockets at once', async () => {
    const ampId = await ampWithSheet()
    const [v1, , v3, v4, v5] = (await sheetOf(ampId)).sockets
    if (!v1 || !v3 || !v4 || !v5) throw new Error('five sockets expected')
    const rows = [v5, v1, { ...plainSocket('V2', 'reverb', '12AT7'), id: null }, v3, v4]
    expect((await keep(ampId, 2, rows)).ok).toBe(true)
    const after = (await sheetOf(ampId)).sockets
    expect(after.map(({ position, role }) => `${position} ${role}`)).toEqual([
      'V5 rectifier',
      'V1 preamp',
      'V2 reverb',
      'V3 output',
      'V4 output',
    ])
  })
})

describe('a sheet is refused', () => {
  it('with one position twice, naming it', async () => {
    const ampId = await ampOnFile()
    const made = await keep(ampId, 1, asNew([plainSocket('V1', 'preamp'), plainSocket('v1', 'output')]))
    expect(made).toEqual({ ok: false, fault: { code: 'position-twice', position: 'v1' } })
    expect(!made.ok && stepFaultText(made.fault, SHOP)).toBe(
      'Position v1 stands twice on the sheet. Every socket needs a position of its own.',
    )
    expect((await sheetOf(ampId)).sockets).toEqual([])
  })

  it.each([
    [{ readings: true }, '1 bench reading belongs to it'],
    [{ fitting: true }, '1 fitted tube belongs to it'],
    [{ readings: true, fitting: true }, '1 bench reading and 1 fitted tube belong to it'],
  ])('when a socket with a past is left out: %o', async (past, told) => {
    const ampId = await ampWithSheet()
    const { sockets } = await sheetOf(ampId)
    const v3 = sockets.find(({ position }) => position === 'V3')
    await readAndFit(ampId, v3?.id ?? '', past)
    const made = await keep(
      ampId,
      2,
      sockets.filter((socket) => socket !== v3),
    )
    expect(!made.ok && stepFaultText(made.fault, { ...SHOP, words: 'US' })).toContain(`V3 cannot be taken out: ${told}`)
    expect(await sheetOf(ampId)).toEqual({ version: 2, sockets })
  })

  it('when it names a socket of another amplifier', async () => {
    const [mine, other] = [await ampWithSheet(), await ampWithSheet()]
    const { sockets } = await sheetOf(other)
    const made = await keep(mine, 2, sockets)
    expect(made).toEqual({ ok: false, fault: { code: 'not-found', what: 'A socket of this sheet' } })
    expect((await sheetOf(other)).sockets).toEqual(sockets)
  })

  it('when a colleague saved since it was opened, telling what; nothing of either is lost', async () => {
    const ampId = await ampWithSheet()
    const { sockets } = await sheetOf(ampId)
    const typed = (position: string, over: Partial<SocketDetails>) =>
      sockets.map((socket) => (socket.position === position ? { ...socket, ...over } : socket))
    expect((await keep(ampId, 2, typed('V3', { screenOhms: 470 }), 'Ines')).ok).toBe(true)
    const late = await keep(ampId, 2, typed('V4', { screenOhms: 1000 }), 'Odo')
    const changes = [{ label: 'V3 screen resistor', from: '', to: '470 Ω' }]
    expect(late).toMatchObject({ ok: false, fault: { code: 'stale', savedBy: 'Ines', changes } })
    expect((await sheetOf(ampId)).sockets.map(({ screenOhms }) => screenOhms)).toEqual([null, null, 470, null, null])
  })
})

it('names values that do not belong to a preamp socket and does not keep them', async () => {
  const ampId = await ampOnFile()
  const made = await keep(ampId, 1, asNew([outputSocket('V1', { role: 'preamp', cathodeOhms: 1500 })]))
  const leftOut = ['bias kind', 'cathode resistor'].map((label) => ({ position: 'V1', label }))
  expect(made).toEqual({ ok: true, value: { version: 2, leftOut } })
  expect((await sheetOf(ampId)).sockets[0]).toMatchObject({ biasKind: '', cathodeOhms: null, matchGroup: '' })
})
