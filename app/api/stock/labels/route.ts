import { wantedMarks } from '@/lib/domain/stock/label/label-choice'
import { requireUser, shopAddress } from '@/lib/session'
import { findLabelSheet } from '@/lib/store/label-sheet'
import { listTubesByMark } from '@/lib/store/tube'
import { printLabels } from '@/lib/workflow/stock/print-labels'

/** Labels of the tubes with these marks, on the sheet and from the place asked for. */
export async function GET(request: Request): Promise<Response> {
  const { shop } = await requireUser()
  const query = new URL(request.url).searchParams
  const sheet = await findLabelSheet(query.get('sheet') ?? '')
  const tubes = await listTubesByMark(wantedMarks(query.get('marks') ?? '').marks)
  if (!sheet || tubes.length === 0) return new Response('There is nothing to print.', { status: 404 })
  const start = Number(query.get('start')) || 1
  const bytes = await printLabels({ shop, sheet, start, tubes, address: await shopAddress(), now: new Date() })
  return new Response(Buffer.from(bytes), {
    headers: {
      'content-type': 'application/pdf',
      'content-disposition': 'inline; filename="labels.pdf"',
      'cache-control': 'private, no-store',
    },
  })
}
