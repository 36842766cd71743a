import { requireUser } from '@/lib/session'
import { findPhoto, readPicture } from '@/lib/store/tube-photo'

const TYPES = { jpg: 'image/jpeg', png: 'image/png', webp: 'image/webp' } as const

/** A picture of a tube, for those who are signed in. */
export async function GET(
  _request: Request,
  { params }: RouteContext<'/api/stock/photos/[photoId]'>,
): Promise<Response> {
  await requireUser()
  const photo = await findPhoto((await params).photoId)
  const bytes = photo && (await readPicture(photo))
  if (!photo || !bytes) return new Response('This picture is not there.', { status: 404 })
  return new Response(Buffer.from(bytes), {
    headers: {
      'content-type': TYPES[photo.format],
      'content-disposition': `inline; filename="${photo.name}"`,
      'content-security-policy': "default-src 'none'",
      'cache-control': 'private, max-age=86400',
    },
  })
}
