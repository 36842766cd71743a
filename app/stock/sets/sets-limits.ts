/** What counts as a set, kept in the address so that it can be gone back to. */
import * as z from 'zod/mini'
import { measure, requiredMeasure } from '@/app/_components/form/fields'
import type { Yardsticks } from '@/lib/domain/matching/candidate'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import type { Shop } from '@/lib/domain/shop/shop'
import { amps, ratio } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'

const setsSchema = (plate: string) =>
  z.object({
    milliamps: requiredMeasure({
      label: `Difference in ${plate} current`,
      unit: 'mA',
      min: 0.1,
      max: 50,
      scale: 0.001,
    }),
    percent: requiredMeasure({ label: 'Difference in transconductance', unit: '%', min: 0.5, max: 100, scale: 0.01 }),
    age: measure({ label: 'Test not older than', unit: 'days', min: 0, max: 36500, whole: true }),
    level: measure({ label: 'Order again below', unit: 'pairs', min: 1, max: 1000, whole: true }),
  })

export type SetsLimits = {
  readonly yardsticks: Yardsticks
  readonly age: number | null
  /** Pairs. Null: no type is watched. */
  readonly level: number | null
  readonly typed: Readonly<Record<'milliamps' | 'percent' | 'age' | 'level', string>>
  /** One sentence by name of the box. */
  readonly faults: ReadonlyMap<string, string>
}

type Query = Readonly<Record<string, string | string[] | undefined>>

const one = (value: string | string[] | undefined) => (typeof value === 'string' ? value : undefined)

export function readSetsLimits(query: Query, shop: Shop): SetsLimits {
  const asked = one(query.milliamps) !== undefined
  const typed = {
    milliamps: one(query.milliamps) ?? String(1000 * USUAL_YARDSTICKS.plateCurrent),
    percent: one(query.percent) ?? String(100 * USUAL_YARDSTICKS.transconductance),
    age: one(query.age) ?? (asked ? '' : String(shop.testAgeDays)),
    level: one(query.level) ?? '',
  }
  const parsed = setsSchema(wordsFor(shop.words).plate).safeParse(typed)
  if (parsed.success) {
    const { milliamps, percent, age, level } = parsed.data
    const yardsticks = { plateCurrent: amps(milliamps), transconductance: ratio(percent) }
    return { yardsticks, age, level, typed, faults: new Map() }
  }
  const faults = new Map(parsed.error.issues.map(({ path, message }) => [path.join('.'), message]))
  return { yardsticks: USUAL_YARDSTICKS, age: null, level: null, typed, faults }
}
