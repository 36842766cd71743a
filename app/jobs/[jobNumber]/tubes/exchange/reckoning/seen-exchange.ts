/** What the page showed, carried by its form to the press: text of JSON, checked when it comes back. */
import * as z from 'zod/mini'
import { WHEREABOUTS } from '@/lib/domain/stock/tube'
import type { TubeExchange } from '@/lib/workflow/tubes/tube-exchange'
import { basisFields, parsedJson, seenTubeFields } from '../../seen-fields'

export type SeenExchange = Pick<TubeExchange, 'quoteId' | 'version' | 'out' | 'into' | 'beside' | 'basis'>

const schema = z.object({
  quoteId: z.string(),
  version: z.number(),
  out: z.object({ ...seenTubeFields, whereabouts: z.enum(WHEREABOUTS), heldFor: z.nullable(z.string()) }),
  into: z.object(seenTubeFields),
  beside: z.array(z.object(seenTubeFields)),
  basis: z.object(basisFields),
})

/** Null: it is not what a page wrote. */
export function readSeen(text: string | undefined): SeenExchange | null {
  const read = schema.safeParse(parsedJson(text))
  // Numbers came out of these very types; they are only compared, and the step reads its own.
  return read.success ? (read.data as unknown as SeenExchange) : null
}
