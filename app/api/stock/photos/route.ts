import { MOST_PHOTO_BYTES } from '@/lib/domain/stock/photo'
import { requireStep } from '@/lib/session'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { addPhoto } from '@/lib/workflow/stock/keep-photo'
import { isSameOrigin, seeOther } from '../same-origin'

/** Beside the picture a form has its other boxes and the marks between them. */
const FRAME_BYTES = 100_000

/** A picture for a tube, as the browser sends a file: with JavaScript and without. */
export async function POST(request: Request): Promise<Response> {
  const { step, shop } = await requireStep()
  if (!isSameOrigin(request)) return new Response('This form was not sent from here.', { status: 403 })
  if (Number(request.headers.get('content-length') ?? 0) > MOST_PHOTO_BYTES + FRAME_BYTES)
    return new Response('This picture is too big. Go back and choose a smaller one.', { status: 413 })
  const form = await request.formData()
  const [tubeId, file] = [form.get('tubeId'), form.get('photo')]
  if (typeof tubeId !== 'string' || !(file instanceof File)) return new Response('No picture came.', { status: 400 })
  const bytes = new Uint8Array(await file.arrayBuffer())
  const added = await addPhoto(step, { tubeId, fileName: file.name, bytes })
  const fault = added.ok ? '' : `?photo=${encodeURIComponent(stepFaultText(added.fault, shop))}`
  return seeOther(`/stock/${encodeURIComponent(tubeId)}${fault}#photos`)
}
