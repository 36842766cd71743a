import { day, flag, measure, optionalChoice, text } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import {
  NOTHING_FURTHER,
  SEEN,
  SEEN_NAMES,
  type SeenName,
  type TubeFurther,
  USED_STATES,
  WARRANTY_STATES,
} from '@/lib/domain/stock/tube-further'

const seenFields = Object.fromEntries(
  SEEN_NAMES.map((name) => [name, text({ label: SEEN[name], max: 200 })]),
) as Record<SeenName, ReturnType<typeof text>>

export const furtherFields = () => ({
  used: optionalChoice('Used', USED_STATES),
  cosmetics: text({ label: 'Cosmetics', max: 200 }),
  box: text({ label: 'Box', max: 200 }),
  ...seenFields,
  warranty: optionalChoice('Warranty', WARRANTY_STATES),
  warrantyUntil: day({ label: 'Warranty until' }),
  hoursBefore: measure({ label: 'Hours before it came', unit: 'h', min: 0, max: 100_000 }),
  reference: flag(),
  setName: text({ label: 'Kept with set', max: 60 }),
})

const NAMES = Object.keys(NOTHING_FURTHER) as readonly (keyof TubeFurther)[]

/** Of what a form with these fields gave. */
export const furtherOf = (typed: TubeFurther): TubeFurther =>
  Object.fromEntries(NAMES.map((name) => [name, typed[name]])) as TubeFurther

export function furtherValues(further: TubeFurther = NOTHING_FURTHER): FormValues {
  const { warrantyUntil, hoursBefore, reference, ...texts } = further
  return {
    ...texts,
    warrantyUntil: warrantyUntil ?? '',
    hoursBefore: hoursBefore === null ? '' : String(hoursBefore),
    reference: reference ? 'on' : '',
  }
}
