import * as z from 'zod/mini'
import { depending, type Typed, typedText } from '@/app/_components/form/depending'
import {
  after,
  box,
  choice,
  day,
  flag,
  type MeasureRule,
  requiredMeasure,
  text,
  version,
} from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { INSTRUMENT_KINDS, type Instrument } from '@/lib/domain/shop/instrument'
import { ohms } from '@/lib/domain/units'

/** What stands in the columns of an instrument that is no meter; nothing is computed from it. */
const NOT_A_METER = { accuracyPercent: 0, accuracyCounts: 0, displayCounts: 1, inputOhms: 0 } as const

const RULES = {
  accuracyPercent: { label: 'Accuracy, percent', unit: '%', min: 0, max: 20 },
  accuracyCounts: { label: 'Accuracy, counts', unit: 'counts', min: 0, max: 1000 },
  displayCounts: { label: 'Display', unit: 'counts', min: 100, max: 10_000_000, whole: true },
  inputOhms: { label: 'Input resistance', unit: 'MΩ', min: 0.01, max: 100_000, scale: 1e6 },
} satisfies Record<keyof typeof NOT_A_METER, MeasureRule>

/** A meter states its figures: none is guessed. Of other instruments they are not asked. */
function meterFields(typed: Typed) {
  const meter = typedText(typed, 'kind') === 'meter'
  const field = (name: keyof typeof RULES) => (meter ? requiredMeasure(RULES[name]) : box(() => NOT_A_METER[name]))
  return {
    accuracyPercent: field('accuracyPercent'),
    accuracyCounts: field('accuracyCounts'),
    displayCounts: field('displayCounts'),
    inputOhms: field('inputOhms'),
  }
}

export const instrumentSchema = depending((typed) =>
  after(
    z.object({
      id: text({ label: 'Instrument' }),
      version: version(),
      name: text({ label: 'Name', required: true, max: 80 }),
      kind: choice('Kind', INSTRUMENT_KINDS),
      calibratedOn: day({ label: 'Calibrated on' }),
      ...meterFields(typed),
      retired: flag(),
    }),
    ({ id, version: saved, retired, inputOhms, ...rest }) => ({
      id: id || null,
      version: saved,
      details: { ...rest, inputResistance: ohms(inputOhms), active: !retired },
    }),
  ),
)

const figure = (value: number): string => String(Number(value.toPrecision(9)))

export function instrumentValues(instrument: Instrument | null): FormValues {
  const blank = { accuracyPercent: '', accuracyCounts: '', displayCounts: '', inputOhms: '' }
  if (!instrument) return { id: '', version: '0', name: '', kind: 'meter', calibratedOn: '', ...blank }
  const { id, version: saved, name, kind, calibratedOn, active, inputResistance, ...rest } = instrument
  const figures = {
    accuracyPercent: figure(rest.accuracyPercent),
    accuracyCounts: figure(rest.accuracyCounts),
    displayCounts: String(rest.displayCounts),
    inputOhms: figure(inputResistance / 1e6),
  }
  const head = { id, version: String(saved), name, kind, calibratedOn: calibratedOn ?? '', retired: active ? '' : 'on' }
  return sheetValues({ ...head, ...(kind === 'meter' ? figures : blank) })
}
