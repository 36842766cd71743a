/** What the page showed, carried by its form to the press: text of JSON, checked when it comes back. */
import * as z from 'zod/mini'
import type { PlanBasis } from '@/lib/domain/stock/plan-basis'
import { WHEREABOUTS } from '@/lib/domain/stock/tube'
import type { TubeExchange } from '@/lib/workflow/tubes/tube-exchange'

export type SeenExchange = Pick<TubeExchange, 'quoteId' | 'version' | 'out' | 'into' | 'beside' | 'basis'>

const test = z.object({
  testedAt: z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}/)),
  instrument: z.string(),
  testPoint: z.object({ plateVoltage: z.number(), screenVoltage: z.nullable(z.number()), gridVoltage: z.number() }),
  plateCurrent: z.number(),
  transconductance: z.nullable(z.number()),
  shorts: z.boolean(),
  leakageNote: z.null(),
})
const there = { tubeId: z.string(), mark: z.string(), price: z.number(), test: z.nullable(test) }
const lines = z.array(z.tuple([z.string(), z.string()]))

/** Every part of it: one that was dropped on the way would count as changed. */
const basis = {
  readings: z.string(),
  sheet: lines,
  supply: lines,
  meter: z.string(),
  fitted: z.string(),
  windows: z.string(),
  types: z.string(),
  corrections: z.string(),
} satisfies Record<keyof PlanBasis, z.ZodMiniType>

const schema = z.object({
  quoteId: z.string(),
  version: z.number(),
  out: z.object({ ...there, whereabouts: z.enum(WHEREABOUTS), heldFor: z.nullable(z.string()) }),
  into: z.object(there),
  beside: z.array(z.object(there)),
  basis: z.object(basis),
})

/** Null: it is not what a page wrote. */
export function readSeen(text: string | undefined): SeenExchange | null {
  const read = schema.safeParse(parsed(text ?? ''))
  // Numbers came out of these very types; they are only compared, and the step reads its own.
  return read.success ? (read.data as unknown as SeenExchange) : null
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}
