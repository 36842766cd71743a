import * as z from 'zod/mini'
import { flatRows, type RowValues } from '@/app/_components/form/edit-rows'
import { after, choice, flag, measure, refuseAt, rows, text } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import { furtherFields, furtherValues } from '../further-schema'
import { blankSetting, readingFields, type SettingStart, settingFields } from '../test-schema'
import { SHARED_BLANK, type StockKit, sharedFields } from '../tube-schema'

/** Enough for a carton; more than that is two deliveries. */
export const MOST_ROWS = 200

export const receiveSchema = (kit: StockKit) =>
  z.object({
    ...sharedFields(kit),
    ...furtherFields(),
    ...settingFields(kit.words),
    sections: choice('Sections', ['1', '2']),
    untested: measure({ label: 'Untested, without a row', unit: '', min: 0, max: MOST_ROWS, whole: true }),
    rows: after(
      rows(z.object({ mark: text({ label: 'Mark', max: 40 }), ...readingFields(kit.words), shorts: flag() })),
      (all, context) => {
        if (all.length > MOST_ROWS) refuseAt(context, `At most ${MOST_ROWS} rows are taken in at once.`, [])
        return all
      },
    ),
  })

export const BLANK_ROW: RowValues = { mark: '', plateMilliamps: '', gm: '', secondPlateMilliamps: '', secondGm: '' }

const FIRST_ROWS = 4

export function receiveValues(start: SettingStart): FormValues {
  const blanks = Array<RowValues>(FIRST_ROWS).fill(BLANK_ROW)
  return {
    ...SHARED_BLANK,
    ...furtherValues(),
    ...blankSetting(start),
    sections: '1',
    untested: '',
    ...flatRows('rows', blanks),
  }
}

/** Values for the next delivery: what they share stays, the rows are empty again. */
export function nextDelivery(values: FormValues): FormValues {
  const shared = Object.entries(values).filter(([name]) => !name.startsWith('rows.'))
  const blanks = Array<RowValues>(FIRST_ROWS).fill(BLANK_ROW)
  return { ...Object.fromEntries(shared), untested: '', ...flatRows('rows', blanks) }
}
