import { describe, expect, it } from 'vitest'
import type { Day } from '@/lib/domain/calendar'
import type { InstrumentDetails } from '@/lib/domain/shop/instrument'
import { ohms } from '@/lib/domain/units'
import { db } from '@/lib/store/database'
import { listHistoryOf } from '@/lib/store/history'
import { findInstrument, listInstruments } from '@/lib/store/instrument'
import { keepInstrument } from '@/lib/workflow/shop/keep-instrument'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { ampOnFile, ownerOnFile } from '@/tests/support/amps'
import { freshDatabase } from '@/tests/support/fresh-database'
import { keeping } from '@/tests/support/keeper'
import { atBench, atCounter, NOW } from '@/tests/support/person-at-work'
import { openStockedShop, SHOP } from '@/tests/support/stocked-shop'

freshDatabase()
await openStockedShop()

const meter: InstrumentDetails = {
  name: 'Yellow meter',
  kind: 'meter',
  calibratedOn: '2031-02-11' as Day,
  accuracyPercent: 0.5,
  accuracyCounts: 3,
  displayCounts: 6000,
  inputResistance: ohms(10e6),
  active: true,
}

async function onFile(over: Partial<InstrumentDetails> = {}): Promise<string> {
  const kept = await keepInstrument(atBench(), { id: null, version: 0, details: { ...meter, ...over } })
  if (!kept.ok) throw new Error(kept.fault.code)
  return kept.value
}

const correct = (id: string, version: number, over: Partial<InstrumentDetails>, step = atBench()) =>
  keepInstrument(step, { id, version, details: { ...meter, ...over } })

describe('who may', () => {
  it.each([
    ['a technician', atBench(), true],
    ['whoever keeps the shop', keeping(), true],
    ['the counter', atCounter(), false],
  ])('%s: %s', async (_who, step, expected) => {
    const kept = await keepInstrument(step, { id: null, version: 0, details: meter })
    expect(kept.ok).toBe(expected)
    if (!kept.ok) expect(kept.fault).toEqual({ code: 'not-your-instruments' })
  })
})

describe('an instrument', () => {
  it('is written down as it is, and read back', async () => {
    const id = await onFile()
    expect(await findInstrument(id)).toEqual({ ...meter, id, version: 1 })
    const [entry] = await listHistoryOf('instrument', id)
    expect(entry).toMatchObject({ did: 'Instrument written down', person: 'Ines', at: NOW })
    expect(entry?.changes).toContainEqual({ label: 'DC accuracy', from: '', to: '± (0.5 % + 3 counts)' })
  })

  it('without a known calibration stays without one', async () => {
    expect(await findInstrument(await onFile({ calibratedOn: null }))).toMatchObject({ calibratedOn: null })
  })

  it('is corrected, with what changed', async () => {
    const id = await onFile()
    expect(await correct(id, 1, { inputResistance: ohms(11.5e6), calibratedOn: '2031-05-01' as Day })).toEqual({
      ok: true,
      value: id,
    })
    const [entry] = await listHistoryOf('instrument', id)
    expect(entry?.changes).toEqual([
      { label: 'Calibrated on', from: '2031-02-11', to: '2031-05-01' },
      { label: 'Input resistance', from: '10 MΩ', to: '11.5 MΩ' },
    ])
  })

  it('corrected by two: the second is told what the first saved', async () => {
    const id = await onFile()
    expect((await correct(id, 1, { name: 'Blue meter' })).ok).toBe(true)
    const second = await correct(id, 1, { accuracyCounts: 5 }, atBench('Odo'))
    expect(second).toMatchObject({ ok: false, fault: { code: 'stale', savedBy: 'Ines' } })
    expect(second.ok || stepFaultText(second.fault, SHOP)).toContain('Yellow meter → Blue meter')
    expect(await findInstrument(id)).toMatchObject({ name: 'Blue meter', accuracyCounts: 3, version: 2 })
  })

  it('retired stays in the list, behind those in use', async () => {
    const id = await onFile({ name: 'AAA first by name' })
    expect((await correct(id, 1, { name: 'AAA first by name', active: false })).ok).toBe(true)
    expect((await listInstruments()).at(-1)).toMatchObject({ id, active: false })
    expect(await listHistoryOf('instrument', id)).toMatchObject([{ did: 'Instrument retired' }, {}])
  })

  it('that is not there is told', async () => {
    expect(await correct('none', 1, {})).toMatchObject({ ok: false, fault: { code: 'not-found' } })
  })
})

describe('a meter that readings were taken with', () => {
  it('stays a meter; its name may change', async () => {
    const id = await onFile()
    await readingWith(id)
    const refused = await correct(id, 1, { kind: 'other' })
    expect(refused).toEqual({ ok: false, fault: { code: 'meter-has-readings', name: 'Yellow meter' } })
    expect((await correct(id, 1, { name: 'Green meter' })).ok).toBe(true)
  })

  it('that nobody has used may become something else', async () => {
    expect((await correct(await onFile(), 1, { kind: 'other' })).ok).toBe(true)
  })
})

async function readingWith(instrumentId: string): Promise<void> {
  const customerId = await ownerOnFile()
  const ampId = await ampOnFile({}, customerId)
  const job = {
    number: '9001-8',
    customerId,
    ampId,
    state: 'on-bench',
    fault: 'hum',
    takenInById: 'o',
    takenInBy: 'Odo',
  }
  const { id } = await db().job.create({ data: { ...job, receivedAt: NOW, stateSince: NOW } })
  const set = {
    jobId: id,
    instrumentId,
    phase: 'before',
    takenBy: 'Ines',
    wallVolts: 120,
    warmupMinutes: 20,
    signalState: 'none',
  }
  await db().readingSet.create({ data: { ...set, takenAt: NOW } })
}
