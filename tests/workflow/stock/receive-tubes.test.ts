import { describe, expect, it } from 'vitest'
import { NOTHING_FURTHER } from '@/lib/domain/stock/tube-further'
import { findTube, findTubeByMark, listStockForFamily } from '@/lib/store/tube'
import { listSetMembers } from '@/lib/store/tube-set'
import { type DeliveryRow, receiveTubes } from '@/lib/workflow/stock/receive-tubes'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, atCounter } from '@/tests/support/person-at-work'
import { openStockedShop, section, testEntry, tubeDetails, tubeInStock } from '@/tests/support/stocked-shop'

const database = freshDatabase()
await openStockedShop()

const row = (mark: string, milliamps: number | null = null, slope: number | null = null): DeliveryRow => ({
  mark,
  sections: [section(milliamps, slope)],
  shorts: false,
})

function receive(
  rows: readonly DeliveryRow[],
  { untested = 0, designation = '6V6GT', setting = {}, step = atBench() } = {},
) {
  const { sections: _sections, shorts: _shorts, ...shared } = testEntry(setting)
  const { mark: _mark, ...details } = tubeDetails({ designation })
  return receiveTubes(step, { details, setting: shared, rows, untested })
}

describe('a delivery', () => {
  it('of three rows and two untested ones is five tubes; only rows that were read have a test', async () => {
    const received = await receive([row('R-1', 45, 4.1), row('', 46, 4.2), row('R-3')], { untested: 2 })
    if (!received.ok) throw new Error(received.fault.code)
    expect(received.value.map(({ mark }) => mark)).toEqual(['R-1', 'T-0001', 'R-3', 'T-0002', 'T-0003'])
    const stock = await listStockForFamily('6V6')
    expect(stock.map(({ tube, test }) => [tube.mark, test?.sections[0]?.plateCurrent ?? null])).toEqual([
      ['R-1', 0.045],
      ['R-3', null],
      ['T-0001', 0.046],
      ['T-0002', null],
      ['T-0003', null],
    ])
    expect(await findTube(received.value[1]?.id ?? '')).toMatchObject({ location: 'Drawer 4', price: 4500 })
  })

  it('gives every one the further facts they share, and a set its members', async () => {
    const { sections: _sections, shorts: _shorts, ...setting } = testEntry({})
    const { mark: _mark, ...details } = tubeDetails({ designation: '6V6GT', acquired: 'Estate sale' })
    const further = { ...NOTHING_FURTHER, used: 'unused', box: 'white', glass: 'smoked', setName: 'Carton 7' } as const
    const rows = [row('F-1', 45, 4.1), row('F-2')]
    const received = await receiveTubes(atBench(), { details, further, setting, rows, untested: 1 })
    if (!received.ok) throw new Error(received.fault.code)
    for (const { id } of received.value)
      expect(await findTube(id)).toMatchObject({
        acquired: 'Estate sale',
        further: { used: 'unused', box: 'white', glass: 'smoked', setName: 'Carton 7', reference: false },
      })
    expect(await listSetMembers('Carton 7')).toHaveLength(3)
  })

  it('with rows at fault saves nothing and tells every one of them by its row', async () => {
    await tubeInStock({ mark: 'X-1', designation: 'EL84' }, null)
    const before = await database.tube.count()
    const refused = await receive([row('Y-1', 45), row('x 1', 45), row('???'), row('y-1'), row('Y-2', null, 4)])
    expect(refused.ok ? [] : 'faults' in refused.fault ? refused.fault.faults : []).toEqual([
      { code: 'mark-taken', field: 'mark', mark: 'X-1', designation: 'EL84', row: 1 },
      { code: 'not-a-mark', field: 'mark', typed: '???', row: 2 },
      { code: 'mark-twice', field: 'mark', mark: 'Y-1', firstRow: 0, row: 3 },
      { code: 'current-missing', field: 'plateMilliamps', row: 4 },
    ])
    expect(await database.tube.count()).toBe(before)
    expect(await findTubeByMark('Y-1')).toBeNull()
  })

  it('whose test point is missing is told so once, not for every row', async () => {
    const refused = await receive([row('', 45), row('', 46)], { setting: { plateVoltage: null } })
    expect(refused).toMatchObject({
      ok: false,
      fault: { faults: [{ code: 'point-missing', field: 'plateVolts', row: null }] },
    })
  })

  it('never gives an automatic mark that a later row bears', async () => {
    const next = (await database.counter.findUniqueOrThrow({ where: { name: 'tube' } })).next
    const byHand = `T-${String(next).padStart(4, '0')}`
    const received = await receive([row(''), row(byHand)])
    expect(received.ok && received.value.map(({ mark }) => mark)).toEqual([
      `T-${String(next + 1).padStart(4, '0')}`,
      byHand,
    ])
  })

  it('with a shorted one keeps it as a short and no reading', async () => {
    const received = await receive([{ ...row('S-9'), shorts: true }])
    expect(received.ok).toBe(true)
    const stocked = (await listStockForFamily('6V6')).find(({ tube }) => tube.mark === 'S-9')
    expect(stocked).toMatchObject({ test: null, shortsFoundAt: expect.any(Date) })
  })

  it('untested is for anybody, with readings it is bench work', async () => {
    expect((await receive([row('')], { step: atCounter() })).ok).toBe(true)
    expect(await receive([row('', 45)], { step: atCounter() })).toMatchObject({
      ok: false,
      fault: { code: 'not-your-duty' },
    })
  })
})
