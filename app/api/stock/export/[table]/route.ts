import { dayInZone } from '@/lib/domain/calendar'
import { requireUser } from '@/lib/session'
import { EXPORT_TABLES, exportTable } from '@/lib/workflow/tables/export-table'

/** One table of the shop as a CSV file, sent as it is read. */
export async function GET(_request: Request, { params }: RouteContext<'/api/stock/export/[table]'>): Promise<Response> {
  const { shop } = await requireUser()
  const asked = (await params).table
  const table = EXPORT_TABLES.find((each) => each === asked)
  if (!table) return new Response('There is no such table.', { status: 404 })
  const lines = exportTable(table, shop)
  const encoder = new TextEncoder()
  const body = new ReadableStream<Uint8Array>({
    async pull(controller) {
      // Some hundred records at a time: a piece for each would cost more than the records.
      let text = ''
      while (text.length < 64_000) {
        const { value, done } = await lines.next()
        if (done) break
        text += value
      }
      if (text === '') controller.close()
      else controller.enqueue(encoder.encode(text))
    },
  })
  return new Response(body, {
    headers: {
      'content-type': 'text/csv; charset=utf-8; header=present',
      'content-disposition': `attachment; filename="${table}-${dayInZone(new Date(), shop.timeZone)}.csv"`,
      'cache-control': 'private, no-store',
    },
  })
}
