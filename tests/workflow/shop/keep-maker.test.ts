import { expect, test } from 'vitest'
import { listHistoryOf } from '@/lib/store/history'
import { findMaker, listMakers } from '@/lib/store/maker'
import { keepMaker } from '@/lib/workflow/shop/keep-maker'
import { freshDatabase } from '@/tests/support/fresh-database'

const step = {
  actor: { id: 'p', name: 'Ada Marl', role: 'technician', keepsShop: false },
  now: new Date('2026-03-01T09:00:00Z'),
} as const
const details = { name: 'Merrow Glass', sourceCodes: ['987'], janLetters: ['CQX'], factoryMarks: ['Δ'], note: '' }

freshDatabase()

test('a maker is kept with its marks; the same name written otherwise is refused; a stale save is told who changed what', async () => {
  const kept = await keepMaker(step, { id: null, version: 0, details })
  if (!kept.ok) throw new Error(kept.fault.code)
  expect(await findMaker(kept.value)).toMatchObject(details)
  const again = await keepMaker(step, { id: null, version: 0, details: { ...details, name: ' merrow  GLASS' } })
  expect(again).toEqual({ ok: false, fault: { code: 'maker-there', name: 'Merrow Glass' } })
  expect(await listMakers()).toHaveLength(1)

  const more = { ...details, sourceCodes: ['987', '988'] }
  expect(await keepMaker(step, { id: kept.value, version: 1, details: more })).toEqual({ ok: true, value: kept.value })
  const stale = await keepMaker(step, { id: kept.value, version: 1, details })
  expect(stale).toMatchObject({ ok: false, fault: { code: 'stale', savedBy: 'Ada Marl' } })
  const history = await listHistoryOf('maker', kept.value)
  expect(history.map(({ did }) => did).sort()).toEqual(['Maker corrected', 'Maker written down'])
})
