/** The set of a card, carried by its form to the press. */
import * as z from 'zod/mini'
import type { SeenChoice } from '@/lib/workflow/tubes/seen-choice'
import { basisFields, parsedJson, seenTubeFields } from './seen-fields'

const schema = z.object({ basis: z.object(basisFields), tubes: z.array(z.object(seenTubeFields)) })

/** Null: it is not what a page wrote. */
export function readSeenSet(text: string | undefined): SeenChoice | null {
  const read = schema.safeParse(parsedJson(text))
  // Numbers came out of these very types; they are only compared, and the step reads its own.
  return read.success ? (read.data as unknown as SeenChoice) : null
}
