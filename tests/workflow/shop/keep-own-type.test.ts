import { beforeAll, describe, expect, it } from 'vitest'
import type { Socket } from '@/lib/domain/amp/socket'
import { benchResult } from '@/lib/domain/bench/bench-result'
import type { ReadingConditions, SocketEntry } from '@/lib/domain/bench/reading-set'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { OwnTypeEntry } from '@/lib/domain/tube/own/own-type-entry'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { findAmpSheet } from '@/lib/store/amp'
import { db, inTransaction } from '@/lib/store/database'
import { listHistoryOf } from '@/lib/store/history'
import { createJob } from '@/lib/store/job'
import { findOwnType, listOwnTypes } from '@/lib/store/own-type'
import { findLatestReadings } from '@/lib/store/reading-set'
import { findShop } from '@/lib/store/shop'
import { findTube, listTubes } from '@/lib/store/tube'
import { keepAmpSheet } from '@/lib/workflow/bench/keep-amp-sheet'
import { keepReadings } from '@/lib/workflow/bench/keep-readings'
import { keepOwnType } from '@/lib/workflow/shop/keep-own-type'
import { ownEntry, ownRow } from '@/tests/domain/tube/own/own-type-fixture'
import { ampOnFile, outputSocket, ownerOnFile } from '@/tests/support/amps'
import { freshDatabase } from '@/tests/support/fresh-database'
import { keeping } from '@/tests/support/keeper'
import { atBench, atCounter, NOW } from '@/tests/support/person-at-work'
import { openStockedShop, tubeInStock } from '@/tests/support/stocked-shop'

freshDatabase()
beforeAll(() => openStockedShop())

const numbered = (number: number, over: Partial<OwnTypeEntry> = {}) =>
  ownEntry({ designation: `QH-T${number}`, otherNumbers: [], ...over })

const write = (entry: OwnTypeEntry, step = atBench()) =>
  keepOwnType(step, { id: null, version: 0, entry, active: true })

async function written(entry: OwnTypeEntry): Promise<string> {
  const kept = await write(entry)
  return kept.ok ? kept.value : expect.fail(kept.fault.code)
}

const shop = async () => (await findShop()) ?? expect.fail('no shop')
const known = async (designation: string) => findTubeType(designation, await shop())

describe('a type written down', () => {
  it('is looked up from then on, and its history says what was written', async () => {
    const id = await written(numbered(1, { otherNumbers: ['QH-T1A'] }))
    expect(await known('qh t1a')).toMatchObject({ typeId: id, ratings: { plateWatts: { value: 25 } } })
    expect((await findOwnType(id))?.entry).toEqual(numbered(1, { otherNumbers: ['QH-T1A'] }))
    const [entry] = await listHistoryOf('type', id)
    expect(entry).toMatchObject({ did: 'Type written down', person: 'Ines' })
    expect(entry?.changes).toContainEqual({ label: 'Plate dissipation', from: '', to: '25 W' })
    expect(entry?.changes).toContainEqual({
      label: 'Operating point 1',
      from: '',
      to: '350 V, screen 250 V, grid -17 V: 60 mA, screen 3.2 mA, gm 5.4 mA/V',
    })
  })

  it('by whoever keeps the shop too, but not at the counter', async () => {
    expect((await write(numbered(2), keeping())).ok).toBe(true)
    expect(await write(numbered(3), atCounter())).toEqual({
      ok: false,
      fault: { code: 'not-your-duty', duty: 'bench-work' },
    })
    expect(await known('QH-T3')).toBeNull()
  })

  it('under a number of the handbook or of another own type is refused, and nothing is kept', async () => {
    await written(numbered(4))
    const before = (await listOwnTypes()).length
    const fault = (number: string, by: string, field = 'designation') => ({
      ok: false,
      fault: { code: 'own-type-refused', faults: [{ code: 'number-taken', field, number, by }] },
    })
    expect(await write(ownEntry({ designation: 'CV511', otherNumbers: [] }))).toEqual(fault('CV511', '6V6GT'))
    expect(await write(numbered(5, { otherNumbers: ['qh t4'] }))).toEqual(fault('qh t4', 'QH-T4', 'otherNumbers'))
    expect(await listOwnTypes()).toHaveLength(before)
  })

  it('with curves that cannot meet its points is refused', async () => {
    const rows = [ownRow({ plateMilliamps: 700, gmMilliampsPerVolt: null })]
    expect(await write(numbered(6, { rows }))).toMatchObject({
      fault: {
        code: 'own-type-refused',
        faults: [{ code: 'curves-do-not-fit', cause: 'unlike-the-type', like: '6L6' }],
      },
    })
  })
})

describe('a type corrected', () => {
  it('is looked up as corrected; the history says from what to what', async () => {
    const id = await written(numbered(10))
    const entry = numbered(10, { limits: { ...ownEntry().limits, plateWatts: 23 }, system: 'design-centre' })
    expect(await keepOwnType(atBench(), { id, version: 1, entry, active: true })).toEqual({ ok: true, value: id })
    expect(await known('QH-T10')).toMatchObject({ ratings: { system: 'design-centre', plateWatts: { value: 23 } } })
    const [entryOfHistory] = await listHistoryOf('type', id)
    expect(entryOfHistory?.changes).toEqual([
      { label: 'Rating system', from: 'design-maximum', to: 'design-centre' },
      { label: 'Plate dissipation', from: '25 W', to: '23 W' },
    ])
  })

  it('from an older state is refused with what a colleague changed', async () => {
    const id = await written(numbered(11))
    const heater = (heaterAmps: number, by: string) =>
      keepOwnType(atBench(by), { id, version: 1, entry: numbered(11, { heaterAmps }), active: true })
    expect((await heater(1.1, 'Ruan')).ok).toBe(true)
    expect(await heater(1.2, 'Ines')).toMatchObject({
      fault: {
        code: 'stale',
        savedBy: 'Ruan',
        changes: [{ label: 'Heater', from: '6.3 V, 0.9 A', to: '6.3 V, 1.1 A' }],
      },
    })
    expect((await findOwnType(id))?.entry.heaterAmps).toBe(1.1)
  })

  it('that is not there is told', async () => {
    expect(await keepOwnType(atBench(), { id: 'none', version: 1, entry: numbered(12), active: true })).toMatchObject({
      fault: { code: 'not-found' },
    })
  })
})

describe('a type withdrawn', () => {
  it('is looked up no more, cannot be written down anew, and comes back when taken into use', async () => {
    const entry = numbered(20)
    const id = await written(entry)
    const set = (version: number, active: boolean) => keepOwnType(atBench(), { id, version, entry, active })
    expect((await set(1, false)).ok).toBe(true)
    expect(await known('QH-T20')).toBeNull()
    expect(await write(entry)).toEqual({ ok: false, fault: { code: 'type-withdrawn', designation: 'QH-T20' } })
    expect((await listHistoryOf('type', id))[0]).toMatchObject({
      did: 'Type withdrawn',
      changes: [{ label: 'In use', from: 'yes', to: 'no, withdrawn' }],
    })
    expect((await set(2, true)).ok).toBe(true)
    expect(await known('QH-T20')).toMatchObject({ typeId: id })
  })

  it('is held back when its number was taken meanwhile', async () => {
    const entry = numbered(21)
    const id = await written(entry)
    await keepOwnType(atBench(), { id, version: 1, entry, active: false })
    await written(numbered(22, { otherNumbers: ['QH-T21'] }))
    expect(await keepOwnType(atBench(), { id, version: 2, entry, active: true })).toMatchObject({
      fault: { code: 'own-type-refused', faults: [{ code: 'number-taken', number: 'QH-T21', by: 'QH-T22' }] },
    })
  })
})

describe('tubes in stock', () => {
  it('that bear its number take its family, are found by it, and go back when it is withdrawn', async () => {
    const tubeId = await tubeInStock({ designation: 'QH-T30' }, null)
    const family = async () => (await findTube(tubeId))?.family
    expect(await family()).toBe('QHT30')
    const entry = numbered(30, { family: 'KT66' })
    const id = await written(entry)
    expect(await family()).toBe('KT66')
    const found = await listTubes({ search: 'KT66', view: 'all', now: NOW })
    expect(found.tubes.map(({ tube }) => tube.id)).toContain(tubeId)
    await keepOwnType(atBench(), { id, version: 1, entry, active: false })
    expect(await family()).toBe('QHT30')
  })
})

describe('bench readings on an amplifier fitted with it', () => {
  const CONDITIONS: Omit<ReadingConditions, 'instrumentId'> = {
    ...{ phase: 'before' as const, wallVolts: 120, warmupMinutes: 15, signalState: 'no signal', note: '' },
    ...{ resistorTolerancePercent: 1, copperWarmingCelsius: 15 },
  }

  async function round(typeFitted: string) {
    const meter = await db().instrument.create({ data: { name: `Meter for ${typeFitted}`, kind: 'meter' } })
    const customerId = await ownerOnFile()
    const ampId = await ampOnFile({ mainsVolts: 120 }, customerId)
    const sense = { biasKind: 'grid-supplied', cathodeOhms: null, senseOhms: 10, typeFitted } as const
    const sockets = ['V1', 'V2'].map((position) => ({ ...outputSocket(position, sense), id: null }))
    const kept = await keepAmpSheet(atBench(), { ampId, version: 1, outputClass: 'push-pull', sockets })
    if (!kept.ok) return expect.fail(kept.fault.code)
    const who = { customerId, ampId, takenInById: 'odo', takenInBy: 'Odo', receivedAt: NOW }
    const intake = {
      fault: 'Hums',
      faultSettings: '',
      spendingLimit: null,
      promisedOn: null,
      oldPartsBack: false,
      items: [],
    }
    const job = await inTransaction((tx) => createJob(tx, { ...intake, ...who }))
    const sheet = (await findAmpSheet(ampId)) ?? expect.fail('no sheet')
    // 400 V at the plate and 0.45 V over 10 Ω: 45 mA through the cathode.
    const read = ({ id }: Socket): SocketEntry => ({
      ...{ socketId: id, method: 'cathode-sense', plateVolts: 400, cathodeVolts: 0.45, screenVolts: 300 },
      ...{ gridVolts: -25, senseDropVolts: 0.45, halfDropVolts: null, screenDropVolts: null },
    })
    const saved = await keepReadings(atBench(), {
      ...{ jobNumber: job.number, setId: null, version: 0 },
      conditions: { ...CONDITIONS, instrumentId: meter.id },
      entries: sheet.sockets.map(read),
    })
    if (!saved.ok) return expect.fail(saved.fault.code)
    const set = (await findLatestReadings(job.id, 'before')) ?? expect.fail('no readings')
    return { sheet, set }
  }

  it('get a verdict against the rating written down: 45 mA less 5.1 % screen at 399.55 V is 17.1 W of 25 W', async () => {
    await written(numbered(40))
    const { sheet, set } = await round('QH-T40')
    const { sockets } = benchResult(sheet, set, await shop())
    expect(sockets).toHaveLength(2)
    for (const { outcome } of sockets) {
      if (outcome.kind !== 'idle') return expect.fail(outcome.kind)
      const { plateWatts, platePercent, verdict } = outcome.idle
      const watts = 0.045 * (1 - 3.2 / 63.2) * (400 - 0.45)
      expect(plateWatts.value).toBeCloseTo(watts, 6)
      expect(platePercent?.value).toBeCloseTo((100 * watts) / 25, 6)
      expect(verdict.overRating).toBe('no')
      expect(['within', 'uncertain']).toContain(verdict.verdict)
    }
  })

  it('have none in a shop that does not know it: the gap is told', async () => {
    const { sheet, set } = await round('QH-T41')
    const { sockets } = benchResult(sheet, set, { ...(await shop()), ...HANDBOOK_ONLY })
    expect(sockets[0]?.outcome).toEqual({
      kind: 'gap',
      gap: { code: 'type-not-in-handbook', socket: 'V1', designation: 'QH-T41' },
    })
  })
})
