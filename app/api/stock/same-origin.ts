/**
 * Whether a form was sent by a page of this very shop. Server actions look after that
 * themselves; a file posted to an address of its own is looked after here. A browser
 * names the origin of every POST.
 */
export function isSameOrigin({ headers }: Request): boolean {
  const origin = headers.get('origin')
  const host = headers.get('x-forwarded-host') ?? headers.get('host')
  if (!origin || !host || !URL.canParse(origin)) return false
  return new URL(origin).host === host
}

/** Back to a page, which then is asked for anew. */
export const seeOther = (path: string): Response => new Response(null, { status: 303, headers: { location: path } })
