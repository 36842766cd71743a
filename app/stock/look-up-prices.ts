/** The neighbours of a price, by what is saved or by what stands in a form that is not saved yet. */
import 'server-only'
import * as z from 'zod/mini'
import { editedForm } from '@/app/_components/form/edit-rows'
import type { FormState, FormValues } from '@/app/_components/form/form-state'
import { readValues } from '@/app/_components/form/read-form'
import { formatMoney } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { isUsable } from '@/lib/domain/stock/latest-test'
import { type PriceLine, priceLines } from '@/lib/domain/stock/price-lines'
import { type PricedFor, priceNeighbours } from '@/lib/domain/stock/price-neighbours'
import { stockType } from '@/lib/domain/stock/stock-type'
import { conditionWord, TUBE_CONDITIONS } from '@/lib/domain/stock/tube'
import { wordsFor } from '@/lib/domain/words'
import { listCorrections } from '@/lib/store/carrying'
import { listStockForFamily, listTests } from '@/lib/store/tube'
import { priceValues } from './price-values'
import { testEntryOf, testFields } from './test-schema'

export async function linesFor(wanted: PricedFor, shop: Shop): Promise<readonly PriceLine[]> {
  const { family } = stockType(wanted.designation, shop)
  const { locale } = wordsFor(shop.words)
  const neighbours = priceNeighbours(wanted, await listStockForFamily(family), await listCorrections())
  return priceLines(neighbours, wanted, (amount) => formatMoney(amount, shop.currency, locale))
}

/** For a form of something that is saved: shown before anything is pressed. */
export async function pricesOf(wanted: PricedFor, shop: Shop): Promise<FormValues> {
  const about = `${wanted.designation}, ${conditionWord(wanted.condition)}, as the list stands now.`
  return priceValues(about, await linesFor(wanted, shop))
}

type OwnTube = { readonly tubeId: string | null }

/** The form again, all that was typed in it, and the lines; null when another button was pressed. */
export async function withPrices(
  before: FormState,
  typed: FormValues,
  shop: Shop,
  { tubeId }: OwnTube = { tubeId: null },
): Promise<FormState | null> {
  const { edit, ...values } = typed
  if (edit !== 'prices') return null
  const designation = values.designation?.trim() ?? ''
  const condition = TUBE_CONDITIONS.find((each) => each === values.condition)
  const found =
    designation === '' || !condition
      ? priceValues(`${designation === '' ? 'Type is empty' : 'No condition is chosen'}: fill it in, then look up.`, [])
      : await pricesOf({ designation, condition, tubeId, test: await testToGoBy(values, shop, tubeId) }, shop)
  // What a colleague saved meanwhile stays beside the boxes.
  return { ...editedForm(before, { ...values, ...found }), theirs: before.theirs }
}

/** The strength: of the tube's last usable record, or as it is typed beside the price. */
async function testToGoBy(values: FormValues, shop: Shop, tubeId: string | null): Promise<PricedFor['test']> {
  if (tubeId !== null) return (await listTests(tubeId)).find(isUsable) ?? null
  const read = readValues(z.object(testFields(shop.words)), values)
  if (!read.ok) return null
  const entry = testEntryOf(read.value)
  return entry.shorts || (entry.sections[0]?.plateCurrent ?? null) === null ? null : entry
}
