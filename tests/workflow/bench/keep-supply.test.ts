import { beforeAll, describe, expect, it } from 'vitest'
import { NO_SUPPLY_FACTS, SOLID_STATE, type SupplyFacts } from '@/lib/domain/amp/supply-facts'
import { findAmpSheet } from '@/lib/store/amp'
import { findSupply } from '@/lib/store/amp-supply'
import { listHistoryOf } from '@/lib/store/history'
import { copyAmpSheet } from '@/lib/workflow/bench/copy-amp-sheet'
import { keepAmpSheet } from '@/lib/workflow/bench/keep-amp-sheet'
import { keepSupply } from '@/lib/workflow/bench/keep-supply'
import { ampOnFile, cathodePair } from '@/tests/support/amps'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench } from '@/tests/support/person-at-work'
import { openStockedShop } from '@/tests/support/stocked-shop'

freshDatabase()
beforeAll(openStockedShop)

const facts = (over: Partial<SupplyFacts> = {}): SupplyFacts => ({ ...NO_SUPPLY_FACTS, ...over })
const keep = (ampId: string, version: number, over: Partial<SupplyFacts>, by = 'Ines') =>
  keepSupply(atBench(by), { ampId, version, facts: facts(over) })
const versionOf = async (ampId: string) => (await findAmpSheet(ampId))?.amp.version

describe('supply and bias kept', () => {
  it('reads back every fact, and counts one save of the amplifier', async () => {
    const ampId = await ampOnFile()
    const known = { openSupplyVolts: 388, sourceOhms: 0, rectifierType: SOLID_STATE, screenFeed: 'own-supply' } as const
    expect(await keep(ampId, 1, known)).toEqual({ ok: true, value: 2 })
    expect(await findSupply(ampId)).toEqual(facts(known))
    expect(await versionOf(ampId)).toBe(2)
  })

  it('of an amplifier nobody wrote anything down for nothing is known', async () => {
    expect(await findSupply(await ampOnFile())).toEqual(NO_SUPPLY_FACTS)
  })

  it('tells the history only what changed, with label and unit', async () => {
    const ampId = await ampOnFile()
    await keep(ampId, 1, { gridLeakOhms: 220_000, heaterWindingAmps: 3 })
    await keep(ampId, 2, { gridLeakOhms: 150_000, heaterWindingAmps: 3, rectifierType: SOLID_STATE })
    const [last] = await listHistoryOf('amp', ampId)
    expect(last).toMatchObject({ did: 'Supply and bias saved', person: 'Ines' })
    expect(last?.changes).toEqual([
      { label: 'Rectifier', from: '', to: 'silicon' },
      { label: 'Grid leak', from: '220 kΩ', to: '150 kΩ' },
    ])
  })

  it('lets a fact become unknown again', async () => {
    const ampId = await ampOnFile()
    await keep(ampId, 1, { reservoirMicrofarads: 40 })
    await keep(ampId, 2, {})
    expect((await findSupply(ampId)).reservoirMicrofarads).toBeNull()
    expect((await listHistoryOf('amp', ampId))[0]?.changes).toEqual([{ label: 'Reservoir', from: '40 µF', to: '' }])
  })
})

describe('supply and bias are refused', () => {
  it('when a colleague saved since the sheet was opened, telling what; nothing is written', async () => {
    const ampId = await ampOnFile()
    await keep(ampId, 1, { sourceOhms: 200 })
    const late = await keep(ampId, 1, { sourceOhms: 150 }, 'Odo')
    const changes = [{ label: 'Source resistance', from: '', to: '200 Ω' }]
    expect(late).toMatchObject({ ok: false, fault: { code: 'stale', savedBy: 'Ines', changes } })
    expect((await findSupply(ampId)).sourceOhms).toBe(200)
  })

  it('for an amplifier that is not there', async () => {
    expect(await keep('nowhere', 1, {})).toEqual({ ok: false, fault: { code: 'not-found', what: 'This amplifier' } })
  })
})

describe('a copied sheet', () => {
  const withSheet = async (serial: string) => {
    const ampId = await ampOnFile({ serial })
    const sockets = cathodePair().map((socket) => ({ ...socket, id: null }))
    await keepAmpSheet(atBench(), { ampId, version: 1, outputClass: 'push-pull', sockets })
    return ampId
  }

  it('brings the supplies of its model along', async () => {
    const [from, onto] = [await withSheet('0417'), await ampOnFile({ serial: '0998' })]
    await keep(from, 2, { openSupplyVolts: 388, sourceOhms: 250 })
    expect(await copyAmpSheet(atBench(), { ampId: onto, version: 1, fromAmpId: from })).toMatchObject({ ok: true })
    expect(await findSupply(onto)).toEqual(facts({ openSupplyVolts: 388, sourceOhms: 250 }))
    expect((await listHistoryOf('amp', onto))[0]?.changes).toContainEqual({
      label: 'Source resistance',
      from: '',
      to: '250 Ω',
    })
  })

  it('leaves alone what was measured on the very amplifier', async () => {
    const [from, onto] = [await withSheet('0417'), await ampOnFile({ serial: '0999' })]
    await keep(from, 2, { sourceOhms: 250 })
    await keep(onto, 1, { sourceOhms: 310 })
    await copyAmpSheet(atBench(), { ampId: onto, version: 2, fromAmpId: from })
    expect((await findSupply(onto)).sourceOhms).toBe(310)
  })
})
