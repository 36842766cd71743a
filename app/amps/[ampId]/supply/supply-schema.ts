/** The boxes of the supply sheet, read into facts, and facts written into the boxes. */
import * as z from 'zod/mini'
import { after, box, measure, optionalChoice, refuseAt, text, version } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { SUPPLY_BOUNDS, SUPPLY_NUMBERS, type SupplyNumber } from '@/lib/domain/amp/supply-bounds'
import { SCREEN_FEEDS, SOLID_STATE, type SupplyFacts } from '@/lib/domain/amp/supply-facts'

/** What the box says for a rectifier without glass. */
export const SILICON = 'silicon'

const rectifier = box((typed): string | null => {
  if (typed === '') return null
  return typed === SILICON ? SOLID_STATE : typed
})

const numbers = Object.fromEntries(
  SUPPLY_NUMBERS.map((key) => [key, measure(SUPPLY_BOUNDS[key])]),
) as unknown as Readonly<Record<SupplyNumber, ReturnType<typeof measure>>>

export const supplySchema = after(
  z.object({
    ampId: text({ label: 'Amplifier', required: true }),
    version: version(),
    rectifierType: rectifier,
    screenFeed: after(optionalChoice('Screens fed', SCREEN_FEEDS), (feed) => feed || null),
    ...numbers,
  }),
  ({ ampId, version: saved, ...facts }, context): { ampId: string; version: number; facts: SupplyFacts } => {
    const { gridColdestVolts: coldest, gridHottestVolts: hottest } = facts
    if (coldest !== null && hottest !== null && coldest > hottest)
      refuseAt(
        context,
        `Grid supply, coldest: ${coldest} V is less negative than the hottest, ${hottest} V. Swap the two.`,
        ['gridColdestVolts'],
      )
    if (facts.screenFeed === 'ultralinear-tap' && facts.ultralinearTapPercent === null)
      refuseAt(context, 'Screen tap is empty. With screens on taps, type the tap in per cent, such as 40.', [
        'ultralinearTapPercent',
      ])
    return { ampId, version: saved, facts }
  },
)

function typed(facts: SupplyFacts, key: SupplyNumber): string {
  const value = facts[key]
  return value === null ? '' : String(Number((value / (SUPPLY_BOUNDS[key].scale ?? 1)).toPrecision(9)))
}

const rectifierTyped = (type: string | null): string => (type === SOLID_STATE ? SILICON : (type ?? ''))

export const supplyValues = (ampId: string, saved: number, facts: SupplyFacts): FormValues =>
  sheetValues({
    ampId,
    version: String(saved),
    rectifierType: rectifierTyped(facts.rectifierType),
    screenFeed: facts.screenFeed ?? '',
    ...Object.fromEntries(SUPPLY_NUMBERS.map((key) => [key, typed(facts, key)])),
  })
