import 'server-only'
import { editRows, type RowValues } from '@/app/_components/form/edit-rows'
import type { FormValues } from '@/app/_components/form/form-state'
import { benchResult } from '@/lib/domain/bench/bench-result'
import { exactDecimal, minorDigits } from '@/lib/domain/money'
import { proposedFindings } from '@/lib/domain/quote/proposed-findings'
import type { Shop } from '@/lib/domain/shop/shop'
import { type Part, partName } from '@/lib/domain/stock/part'
import { wordsFor } from '@/lib/domain/words'
import { findAmpSheet } from '@/lib/store/amp'
import { findJob } from '@/lib/store/job'
import { listOperations, type Operation } from '@/lib/store/operation'
import { findPart } from '@/lib/store/part'
import { findLatestReadings } from '@/lib/store/reading-set'
import { blankLine } from './quote-schema'

/** The form after one of its own buttons; null when it is meant to be kept. */
export async function editQuote(jobNumber: string, shop: Shop, typed: FormValues): Promise<FormValues | null> {
  const edit = typed.edit ?? ''
  if (edit === 'propose:findings') return withProposed(jobNumber, shop, typed)
  if (edit === 'add:parts') {
    const part = typed.part ? await findPart(typed.part) : null
    const edited = editRows(typed, edit, () => (part ? drawnLine(part, shop) : blankLine('pc')))
    return edited && { ...edited, part: '' }
  }
  if (edit !== 'add:labour') return editRows(typed, edit, () => blankLine('flat'))
  const operation = (await listOperations()).find(({ id }) => id === typed.operation)
  const edited = editRows(typed, edit, () => (operation ? operationLine(operation, shop) : hourLine(shop)))
  return edited && { ...edited, operation: '' }
}

const priceText = (shop: Shop, price: Parameters<typeof exactDecimal>[0]) =>
  exactDecimal(price, minorDigits(shop.currency))

const hourLine = (shop: Shop): RowValues => ({ ...blankLine('h'), unitPrice: priceText(shop, shop.hourlyRate) })

const drawnLine = (part: Part, shop: Shop): RowValues => ({
  ...blankLine('pc'),
  ...{ text: partName(part), unitPrice: priceText(shop, part.price), partId: part.id },
})

/** Hours at the shop's rate, or the flat price. */
function operationLine({ name, milliHours, flatPrice }: Operation, shop: Shop): RowValues {
  if (flatPrice !== null) return { ...blankLine('flat'), text: name, unitPrice: priceText(shop, flatPrice) }
  return { ...hourLine(shop), text: name, thousandths: String((milliHours ?? 1000) / 1000) }
}

async function withProposed(jobNumber: string, shop: Shop, typed: FormValues): Promise<FormValues> {
  const { edit: _edit, ...values } = typed
  const job = await findJob(jobNumber)
  const [sheet, set] = job
    ? await Promise.all([findAmpSheet(job.ampId), findLatestReadings(job.id, 'before')])
    : [null, null]
  if (!sheet || !set) return values
  const written = (values.findings ?? '').split(/\r?\n/)
  const proposed = proposedFindings(benchResult(sheet, set, shop), wordsFor(shop.words)).filter(
    (text) => !written.includes(text),
  )
  return { ...values, findings: [...written, ...proposed].join('\n').replace(/^\n+/, '') }
}
