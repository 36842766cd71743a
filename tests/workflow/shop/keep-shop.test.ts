import { describe, expect, it } from 'vitest'
import { money } from '@/lib/domain/money'
import type { ShopSettings } from '@/lib/domain/shop/shop'
import { inTransaction } from '@/lib/store/database'
import { listHistoryOf } from '@/lib/store/history'
import { createOperation } from '@/lib/store/operation'
import { findShop } from '@/lib/store/shop'
import { keepShop } from '@/lib/workflow/shop/keep-shop'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { freshDatabase } from '@/tests/support/fresh-database'
import { keeping } from '@/tests/support/keeper'
import { atBench, NOW } from '@/tests/support/person-at-work'
import { openStockedShop, SHOP } from '@/tests/support/stocked-shop'

freshDatabase()
await openStockedShop()

const keep = (over: Partial<ShopSettings>, version: number, step = keeping()) =>
  keepShop(step, { version, settings: { ...SHOP, ...over } })

async function current() {
  const shop = await findShop()
  if (!shop) throw new Error('No shop')
  return shop
}

describe('settings', () => {
  it('are refused to whoever does not keep the shop, and stay', async () => {
    expect(await keep({ name: 'Mine now' }, 1, atBench())).toEqual({
      ok: false,
      fault: { code: 'not-your-duty', duty: 'keep-shop' },
    })
    expect((await current()).name).toBe(SHOP.name)
  })

  it('are changed whole, and the history says what from and to, with units', async () => {
    const over = { taxMilliPercent: 7000, leakageMaxAmps: 0.005, idleFixed: { low: 55, high: 70 }, mainsVolts: 117 }
    expect(await keep({ ...over, hourlyRate: money(9550) }, 1)).toEqual({ ok: true, value: null })
    expect(await current()).toMatchObject({ ...over, hourlyRate: 9550, version: 2 })
    const [entry] = await listHistoryOf('shop', '1')
    expect(entry).toMatchObject({ did: 'Settings changed', person: 'Ada', at: NOW })
    expect(entry?.changes).toEqual([
      { label: 'Hourly rate', from: '$90.00', to: '$95.50' },
      { label: 'Tax', from: 'Sales tax 8.875 %', to: 'Sales tax 7 %' },
      { label: 'Mains', from: '120 V', to: '117 V' },
      { label: 'Idle window, fixed bias', from: '60–70 %', to: '55–70 %' },
      { label: 'Leakage at most', from: '3.5 mA', to: '5 mA' },
    ])
  })

  it('saved by two: the second is told what the first changed, and nothing of it is lost', async () => {
    const { version } = await current()
    expect((await keep({ phone: '555 0100' }, version)).ok).toBe(true)
    const second = await keep({ email: 'odo@lantern.example' }, version, keeping({ name: 'Odo' }))
    expect(second).toMatchObject({ ok: false, fault: { code: 'stale', savedBy: 'Ada' } })
    expect(second.ok || stepFaultText(second.fault, SHOP)).toContain('Phone: 555 0100')
    expect(await current()).toMatchObject({ phone: '555 0100', email: '' })
  })
})

describe('the currency', () => {
  it('may still be changed while no amount is written in it', async () => {
    const { version } = await current()
    expect((await keep({ currency: 'JPY', hourlyRate: money(8000) }, version)).ok).toBe(true)
    expect(await current()).toMatchObject({ currency: 'JPY', hourlyRate: 8000 })
  })

  it('stands once there is a flat price, and everything else can still be changed', async () => {
    await inTransaction((tx) =>
      createOperation(tx, { name: 'Check-over', milliHours: null, flatPrice: money(5000), active: true, place: 0 }),
    )
    const { version } = await current()
    const refused = await keep({ currency: 'EUR' }, version)
    expect(refused).toEqual({ ok: false, fault: { code: 'currency-stands', currency: 'JPY' } })
    expect(refused.ok || stepFaultText(refused.fault, SHOP)).toContain('stays JPY')
    expect((await keep({ currency: 'JPY', name: 'Renamed' }, version)).ok).toBe(true)
    expect(await current()).toMatchObject({ currency: 'JPY', name: 'Renamed' })
  })
})
