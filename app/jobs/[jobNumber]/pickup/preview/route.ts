import { renderPdf } from '@/lib/documents/pdf'
import { requireUser } from '@/lib/session'
import { pickupPreview } from '@/lib/workflow/handover/pickup-facts'

/** The pickup sheet as it would be printed now. Nothing is frozen by looking at it. */
export async function GET(
  _request: Request,
  { params }: RouteContext<'/jobs/[jobNumber]/pickup/preview'>,
): Promise<Response> {
  const { shop } = await requireUser()
  const { jobNumber } = await params
  const now = new Date()
  const paper = await pickupPreview(shop, decodeURIComponent(jobNumber), now)
  if (!paper) return new Response('There is no pickup sheet before the amplifier is released.', { status: 404 })
  const bytes = await renderPdf(paper, { createdAt: now })
  const headers = {
    'content-type': 'application/pdf',
    'content-disposition': 'inline; filename="pickup-sheet-preview.pdf"',
    'cache-control': 'private, no-store',
  }
  return new Response(Buffer.from(bytes), { headers })
}
