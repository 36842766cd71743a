import { beforeAll, describe, expect, it } from 'vitest'
import type { Socket } from '@/lib/domain/amp/socket'
import type { ReadingConditions, SocketEntry } from '@/lib/domain/bench/reading-set'
import type { Job } from '@/lib/domain/job/job'
import { findAmpSheet } from '@/lib/store/amp'
import { db, inTransaction } from '@/lib/store/database'
import { listJobHistory } from '@/lib/store/history'
import { createJob, findJob } from '@/lib/store/job'
import { findLatestReadings, listReadingSets } from '@/lib/store/reading-set'
import { keepAmpSheet } from '@/lib/workflow/bench/keep-amp-sheet'
import { keepReadings, strikeReadings } from '@/lib/workflow/bench/keep-readings'
import { ampOnFile, cathodePair, ownerOnFile } from '@/tests/support/amps'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, atCounter, NOW } from '@/tests/support/person-at-work'
import { openStockedShop } from '@/tests/support/stocked-shop'

freshDatabase()
let meterId: string
beforeAll(async () => {
  await openStockedShop()
  meterId = (await db().instrument.create({ data: { name: 'Meter one', kind: 'meter' } })).id
})

async function jobWithPair(): Promise<{ job: Job; sockets: readonly Socket[] }> {
  const customerId = await ownerOnFile()
  const ampId = await ampOnFile({}, customerId)
  const sockets = cathodePair().map((details) => ({ ...details, id: null }))
  const kept = await keepAmpSheet(atBench(), { ampId, version: 1, outputClass: 'push-pull', sockets })
  if (!kept.ok) throw new Error(kept.fault.code)
  const intake = {
    fault: 'Hums',
    faultSettings: '',
    spendingLimit: null,
    promisedOn: null,
    oldPartsBack: false,
    items: [],
  }
  const who = { customerId, ampId, takenInById: 'odo', takenInBy: 'Odo', receivedAt: NOW }
  const job = await inTransaction((tx) => createJob(tx, { ...intake, ...who }))
  return { job, sockets: (await findAmpSheet(ampId))?.sockets ?? [] }
}

const conditions = (over: Partial<ReadingConditions> = {}): ReadingConditions => ({
  phase: 'before',
  instrumentId: meterId,
  wallVolts: 231,
  warmupMinutes: 15,
  signalState: 'no signal',
  resistorTolerancePercent: 1,
  copperWarmingCelsius: 15,
  note: '',
  ...over,
})

const entry = (socketId: string, over: Partial<SocketEntry> = {}): SocketEntry => ({
  socketId,
  method: 'cathode-bias',
  plateVolts: 300,
  cathodeVolts: 20,
  screenVolts: null,
  gridVolts: null,
  senseDropVolts: null,
  halfDropVolts: null,
  screenDropVolts: null,
  ...over,
})

const blank = { method: '', plateVolts: null, cathodeVolts: null } as const

describe('readings written down', () => {
  it('are kept as read, take the job to the bench, and leave empty sockets out', async () => {
    const { job, sockets } = await jobWithPair()
    const [v1, , v3, v4] = sockets.map(({ id }) => id) as [string, string, string, string]
    const entries = [entry(v1, blank), entry(v3), entry(v4, { plateVolts: 302 })]
    const kept = await keepReadings(atBench(), {
      jobNumber: job.number,
      setId: null,
      version: 0,
      conditions: conditions(),
      entries,
    })
    expect(kept.ok).toBe(true)
    const set = await findLatestReadings(job.id, 'before')
    expect(set?.entries.map(({ socketId }) => socketId)).toEqual([v3, v4])
    expect(set?.entries[1]).toEqual(entry(v4, { plateVolts: 302 }))
    expect(set).toMatchObject({ takenBy: 'Ines', takenAt: NOW, instrumentName: 'Meter one', wallVolts: 231 })
    expect((await findJob(job.number))?.state).toBe('on-bench')
    const history = await listJobHistory(job.id)
    expect(history.map(({ did }) => did)).toContain('Readings before the work taken')
    const taken = history.find(({ did }) => did === 'Readings before the work taken')
    expect(taken?.changes).toContainEqual({ label: 'V3 cathode', from: '', to: '20 V' })
  })

  it('are entered by a technician; the counter is told so', async () => {
    const { job, sockets } = await jobWithPair()
    const entries = [entry(sockets[2]?.id ?? '')]
    const kept = await keepReadings(atCounter(), {
      jobNumber: job.number,
      setId: null,
      version: 0,
      conditions: conditions(),
      entries,
    })
    expect(kept).toEqual({ ok: false, fault: { code: 'not-your-duty', duty: 'bench-work' } })
  })

  it('with every box empty are no readings', async () => {
    const { job, sockets } = await jobWithPair()
    const entries = sockets.map(({ id }) => entry(id, blank))
    const kept = await keepReadings(atBench(), {
      jobNumber: job.number,
      setId: null,
      version: 0,
      conditions: conditions(),
      entries,
    })
    expect(kept).toEqual({ ok: false, fault: { code: 'nothing-read' } })
    expect(await listReadingSets(job.id)).toEqual([])
  })

  it('of another amplifier’s socket are not taken', async () => {
    const [one, other] = [await jobWithPair(), await jobWithPair()]
    const entries = [entry(other.sockets[2]?.id ?? '')]
    const kept = await keepReadings(atBench(), {
      jobNumber: one.job.number,
      setId: null,
      version: 0,
      conditions: conditions(),
      entries,
    })
    expect(kept).toEqual({ ok: false, fault: { code: 'nothing-read' } })
  })
})

describe('readings corrected or struck out', () => {
  it('from an older version are refused with what changed; nothing is half saved', async () => {
    const { job, sockets } = await jobWithPair()
    const v3 = sockets[2]?.id ?? ''
    const write = (version: number, setId: string | null, over: Partial<SocketEntry>, by = 'Ines') =>
      keepReadings(atBench(by), {
        jobNumber: job.number,
        setId,
        version,
        conditions: conditions(),
        entries: [entry(v3, over)],
      })
    const first = await write(0, null, {})
    const id = first.ok ? first.value : ''
    await write(1, id, { cathodeVolts: 21 }, 'Ruan')
    const late = await write(1, id, { plateVolts: 310 })
    const changes = [{ label: 'V3 cathode', from: '20 V', to: '21 V' }]
    expect(late).toMatchObject({ ok: false, fault: { code: 'stale', savedBy: 'Ruan', changes } })
    expect((await findLatestReadings(job.id, 'before'))?.entries[0]).toMatchObject({
      plateVolts: 300,
      cathodeVolts: 21,
    })
  })

  it('struck out, the figures stay in the history', async () => {
    const { job, sockets } = await jobWithPair()
    const entries = [entry(sockets[2]?.id ?? '')]
    const kept = await keepReadings(atBench(), {
      jobNumber: job.number,
      setId: null,
      version: 0,
      conditions: conditions(),
      entries,
    })
    await strikeReadings(atBench(), job.number, kept.ok ? kept.value : '')
    expect(await listReadingSets(job.id)).toEqual([])
    const struck = (await listJobHistory(job.id)).find(({ did }) => did === 'Readings before the work struck out')
    expect(struck?.changes).toContainEqual({ label: 'V3 plate', from: '300 V', to: '' })
  })
})
