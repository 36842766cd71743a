import { requireStep } from '@/lib/session'
import { chooseImport } from '@/lib/workflow/tables/import-tubes'
import { MOST_FILE_BYTES } from '@/lib/workflow/tables/import-words'
import { isSameOrigin, seeOther } from '../same-origin'

/** Beside the file a form has its marks between boxes. */
const FRAME_BYTES = 100_000

/** A list of tubes, as the browser sends a file: with JavaScript and without. Nothing is taken in yet. */
export async function POST(request: Request): Promise<Response> {
  const { step } = await requireStep()
  if (!isSameOrigin(request)) return new Response('This form was not sent from here.', { status: 403 })
  if (Number(request.headers.get('content-length') ?? 0) > MOST_FILE_BYTES + FRAME_BYTES)
    return seeOther('/stock/exchange?refused=table-too-big')
  const file = (await request.formData()).get('table')
  if (!(file instanceof File)) return seeOther('/stock/exchange?refused=table-empty')
  const chosen = await chooseImport(step, { fileName: file.name, bytes: new Uint8Array(await file.arrayBuffer()) })
  if (chosen.ok) return seeOther(`/stock/exchange/${chosen.value}`)
  const { fault } = chosen
  if (fault.code !== 'table-refused') return seeOther('/stock/exchange')
  const row = fault.fault.code === 'table-quote-open' ? `&row=${fault.fault.row}` : ''
  return seeOther(`/stock/exchange?refused=${fault.fault.code}${row}`)
}
