import type { Paper } from '@/lib/documents/paper'
import { renderPdf } from '@/lib/documents/pdf'
import { formatInstant } from '@/lib/domain/calendar'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { findPaper } from '@/lib/store/paper'

/** An issued paper as PDF, drawn again from its frozen view: the same bytes every time, until it is taken back and says so. */
export async function GET(_request: Request, { params }: RouteContext<'/papers/[paperId]'>): Promise<Response> {
  const { shop } = await requireUser()
  const { paperId } = await params
  const paper = await findPaper(paperId)
  if (!paper) return new Response('This paper is not there.', { status: 404 })
  const { takenBackAt, takenBackBecause } = paper
  const since = takenBackAt && formatInstant(takenBackAt, shop.timeZone, wordsFor(shop.words).locale)
  const takenBack = since ? `Taken back ${since}: ${takenBackBecause}` : null
  const bytes = await renderPdf(paper.view as Paper, { createdAt: paper.issuedAt, takenBack })
  const name = `${paper.kind}-${paper.number}.pdf`.replace(/[^A-Za-z0-9.-]+/g, '-')
  return new Response(Buffer.from(bytes), {
    headers: {
      'content-type': 'application/pdf',
      'content-disposition': `inline; filename="${name}"`,
      'cache-control': 'private, no-store',
    },
  })
}
