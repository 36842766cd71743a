import * as z from 'zod/mini'
import { choice, flag, measure, text, version } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import type { TubeTest } from '@/lib/domain/stock/tube'
import type { WordSet } from '@/lib/domain/words'
import { blankTest, type SettingStart, testFields } from '../test-schema'

export const addTestSchema = (words: WordSet) =>
  z.object({ tubeId: text({ label: 'Piece' }), reject: flag(), ...testFields(words) })

/** Instrument and test point of the last test stand there, because readings compare only at the same ones. */
export function addTestValues(tubeId: string, start: SettingStart, last: TubeTest | null): FormValues {
  const blank = { tubeId, reject: '', ...blankTest(start) }
  if (!last) return blank
  const { plateVoltage, screenVoltage, gridVoltage } = last
  return {
    ...blank,
    instrumentName: last.instrumentName,
    plateVolts: plateVoltage === null ? '' : String(plateVoltage),
    screenVolts: screenVoltage === null ? '' : String(screenVoltage),
    gridVolts: gridVoltage === null ? '' : String(gridVoltage),
  }
}

export const hoursSchema = z.object({
  tubeId: text({ label: 'Piece' }),
  fittingId: text({ label: 'Socket' }),
  hours: measure({ label: 'Hours run there', unit: 'h', min: 0, max: 100_000 }),
})

export const photoSchema = z.object({ photoId: text({ label: 'Picture', required: true }) })

export const MOVES = ['sold', 'scrapped', 'in-stock'] as const

export const moveSchema = z.object({
  tubeId: text({ label: 'Piece' }),
  version: version(),
  to: choice('Where to', MOVES),
  reason: text({ label: 'Reason', required: true, max: 200 }),
})
