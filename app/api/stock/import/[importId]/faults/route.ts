import { requireUser } from '@/lib/session'
import { findImport, readImportFile } from '@/lib/store/import'

/** The rows of an import that were refused, each with its fault. */
export async function GET(
  _request: Request,
  { params }: RouteContext<'/api/stock/import/[importId]/faults'>,
): Promise<Response> {
  await requireUser()
  const found = await findImport((await params).importId)
  const bytes = found && (await readImportFile(found.id, 'faults'))
  if (!found || !bytes) return new Response('There is no such file.', { status: 404 })
  return new Response(Buffer.from(bytes), {
    headers: {
      'content-type': 'text/csv; charset=utf-8; header=present',
      'content-disposition': `attachment; filename="to-correct-${found.fileName}"`,
      'cache-control': 'private, no-store',
    },
  })
}
