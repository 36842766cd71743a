import { findShop } from '@/lib/store/shop'
import packageFile from '@/package.json'

export const dynamic = 'force-dynamic'

/** For whoever watches the server: the database is asked, not assumed. */
export async function GET(): Promise<Response> {
  const { version } = packageFile
  try {
    await findShop()
    return Response.json({ status: 'ok', database: 'ok', version })
  } catch (error) {
    console.error('Health check: the database did not answer', error)
    return Response.json({ status: 'failing', database: 'failing', version }, { status: 503 })
  }
}
