/** What a page showed of tubes and of the amplifier, as its form carries it: JSON, checked when it comes back. */
import * as z from 'zod/mini'
import type { PlanBasis } from '@/lib/domain/stock/plan-basis'

const test = z.object({
  testedAt: z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}/)),
  instrument: z.string(),
  testPoint: z.object({ plateVoltage: z.number(), screenVoltage: z.nullable(z.number()), gridVoltage: z.number() }),
  plateCurrent: z.number(),
  transconductance: z.nullable(z.number()),
  shorts: z.boolean(),
  leakageNote: z.null(),
})
export const seenTubeFields = { tubeId: z.string(), mark: z.string(), price: z.number(), test: z.nullable(test) }
const lines = z.array(z.tuple([z.string(), z.string()]))

/** Every part of it: one that was dropped on the way would count as changed. */
export const basisFields = {
  readings: z.string(),
  sheet: lines,
  supply: lines,
  meter: z.string(),
  fitted: z.string(),
  windows: z.string(),
  types: z.string(),
  corrections: z.string(),
} satisfies Record<keyof PlanBasis, z.ZodMiniType>

export function parsedJson(text = ''): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}
