/** One table of the shop as CSV text, in parts as they are read. */
import { dayInZone } from '@/lib/domain/calendar'
import { type JobState, jobStateWord } from '@/lib/domain/job/job-state'
import { minorDigits } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { ampTable, customerTable, jobTable, lotTable, partTable } from '@/lib/exchange/plain-tables'
import { tableRow, testTable, tubeTable } from '@/lib/exchange/tube-table'
import { csvHead, csvRows, csvText } from '@/lib/exchange/write-table'
import { allTubes, listAmpRows, listCustomerRows, listJobRows } from '@/lib/store/export-rows'
import { listStockedParts } from '@/lib/store/part-draw'
import { listLots } from '@/lib/store/tube-lot'

export const EXPORT_TABLES = ['tubes', 'tests', 'lots', 'parts', 'customers', 'amps', 'jobs'] as const
export type ExportTable = (typeof EXPORT_TABLES)[number]

export async function* exportTable(table: ExportTable, shop: Shop): AsyncGenerator<string> {
  const digits = minorDigits(shop.currency)
  const setting = { digits, timeZone: shop.timeZone }
  if (table === 'tubes') {
    const columns = tubeTable(setting)
    yield csvHead(columns)
    for await (const { tube, tests } of allTubes()) yield csvRows(columns, [tableRow(tube, tests)])
  } else if (table === 'tests') {
    const columns = testTable(setting)
    yield csvHead(columns)
    for await (const { tube, tests } of allTubes()) {
      const { mark, designation } = tube
      yield csvRows(
        columns,
        tests.toReversed().map((test) => ({ mark, designation, test })),
      )
    }
  } else yield wholeTable(table, shop, digits)
}

async function wholeTable(table: Exclude<ExportTable, 'tubes' | 'tests'>, shop: Shop, digits: number): Promise<string> {
  switch (table) {
    case 'lots':
      return csvText(lotTable(digits), await listLots())
    case 'parts':
      return csvText(partTable(digits), await listStockedParts())
    case 'customers':
      return csvText(customerTable, await listCustomerRows())
    case 'amps':
      return csvText(ampTable, await listAmpRows())
    case 'jobs':
      return csvText(jobTable(digits), await jobRows(shop))
  }
}

async function jobRows({ timeZone }: Shop) {
  return (await listJobRows()).map(({ receivedAt, collectedAt, state, ...job }) => ({
    ...job,
    state: jobStateWord(state as JobState),
    receivedOn: dayInZone(receivedAt, timeZone),
    collectedOn: collectedAt && dayInZone(collectedAt, timeZone),
  }))
}
