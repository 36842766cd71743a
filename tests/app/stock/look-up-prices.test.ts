import { beforeAll, describe, expect, it } from 'vitest'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { withPrices } from '@/app/stock/look-up-prices'
import { shownPrices } from '@/app/stock/price-values'
import { money } from '@/lib/domain/money'
import { freshDatabase } from '@/tests/support/fresh-database'
import { shopOnFile } from '@/tests/support/quoted-job'
import { openStockedShop, section, tubeInStock } from '@/tests/support/stocked-shop'

freshDatabase()

beforeAll(async () => {
  await openStockedShop()
  for (const [price, milliamps] of [
    [4000, 72],
    [5000, 40],
  ] as const)
    await tubeInStock({ price: money(price) }, { sections: [section(milliamps)] })
  await tubeInStock({ price: money(1500), designation: '6L6GB' })
})

async function lookedUp(typed: FormValues, tubeId: string | null = null) {
  const state = await withPrices(freshForm({}), { edit: 'prices', ...typed }, await shopOnFile(), { tubeId })
  if (!state) throw new Error('Not looked up')
  return state
}

const ASKED = { designation: '6L6GC', condition: 'used-tested' }
const linesOf = async (typed: FormValues) => shownPrices((await lookedUp(typed)).values)?.lines.map(({ text }) => text)

describe('prices looked up on a form', () => {
  it('are three lines, by the median of its condition when nothing was read', async () => {
    expect(await linesOf(ASKED)).toEqual([
      '$45.00: 6L6GC, used, tested, any strength; 2 of them, $40.00 to $50.00.',
      'none in stock: no 6L6GC is priced both in a set and alone.',
      '$15.00: 6L6GB; one of them.',
    ])
  })

  it('go by the strength that is typed beside them, before anything is saved', async () => {
    const read = { plateVolts: '250', screenVolts: '250', gridVolts: '-14', plateMilliamps: '70', shorts: 'none' }
    expect((await linesOf({ ...ASKED, ...read, instrumentName: 'Bench tester 1' }))?.[0]).toBe(
      '$40.00: 6L6GC, used, tested, as strong within 10 %; one of them.',
    )
  })

  it('say “none in stock” three times of a type the shop has none of', async () => {
    const lines = await linesOf({ ...ASKED, designation: 'EL84' })
    expect(lines).toHaveLength(3)
    for (const line of lines ?? []) expect(line).toMatch(/^none in stock/)
  })

  it('keep every box as it was typed, faulty ones too, and save nothing', async () => {
    const typed = { ...ASKED, price: 'forty', 'rows.3.mark': 'V-1', once: 'mark', base: '{}', theirs: 'x' }
    const { values, status, attempt } = await lookedUp(typed)
    expect(values).toMatchObject(typed)
    expect(values.edit).toBeUndefined()
    expect([status, attempt]).toEqual(['fresh', 1])
  })

  it('without a type or a condition name what is missing, and no figure', async () => {
    for (const [typed, missing] of [
      [{ ...ASKED, designation: ' ' }, 'Type is empty'],
      [{ ...ASKED, condition: '' }, 'No condition is chosen'],
    ] as const)
      expect(shownPrices((await lookedUp(typed)).values)).toEqual({
        about: `${missing}: fill it in, then look up.`,
        lines: [],
      })
  })

  it('are no neighbours of themselves: a saved one is left out of its own lines', async () => {
    const own = await tubeInStock({ designation: 'EL34', price: money(9900) })
    expect(shownPrices((await lookedUp({ ...ASKED, designation: 'EL34' }, own)).values)?.lines[0]?.text).toMatch(
      /^none in stock/,
    )
  })

  it('are looked up by their own button alone', async () => {
    expect(await withPrices(freshForm({}), { ...ASKED, edit: 'add:rows' }, await shopOnFile())).toBeNull()
    expect(await withPrices(freshForm({}), ASKED, await shopOnFile())).toBeNull()
  })
})
