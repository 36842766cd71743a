import type { Paper } from '@/lib/documents/paper'
import { renderPdf } from '@/lib/documents/pdf'
import { requireUser } from '@/lib/session'
import { findPaper } from '@/lib/store/paper'

/** An issued paper as PDF, drawn again from its frozen view: the same bytes every time. */
export async function GET(_request: Request, { params }: RouteContext<'/papers/[paperId]'>): Promise<Response> {
  await requireUser()
  const { paperId } = await params
  const paper = await findPaper(paperId)
  if (!paper) return new Response('This paper is not there.', { status: 404 })
  const bytes = await renderPdf(paper.view as Paper, { createdAt: paper.issuedAt })
  const name = `${paper.kind}-${paper.number}.pdf`.replace(/[^A-Za-z0-9.-]+/g, '-')
  return new Response(Buffer.from(bytes), {
    headers: {
      'content-type': 'application/pdf',
      'content-disposition': `inline; filename="${name}"`,
      'cache-control': 'private, no-store',
    },
  })
}
