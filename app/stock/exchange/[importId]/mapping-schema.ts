import * as z from 'zod/mini'
import { after, box, choice, refuseAt, rows, text } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'

export const MODES = ['all', 'good'] as const

/** `names` are the meanings a column may have; none has two columns, and the type has one. */
export const mappingSchema = (names: readonly string[]) =>
  z.object({
    importId: text({ label: 'Import', required: true }),
    mode: choice('What to do with bad rows', MODES),
    columns: after(rows(z.object({ means: box((typed) => (names.includes(typed) ? typed : '')) })), (all, context) => {
      const means = all.map((each) => each.means)
      for (const [place, name] of means.entries())
        if (name !== '' && means.indexOf(name) < place)
          refuseAt(context, 'Another column has this meaning already. Choose one of them.', [place, 'means'])
      if (!means.includes('designation'))
        refuseAt(context, 'No column is the type. Choose which one it is.', [0, 'means'])
      return means.map((name) => name || null)
    }),
  })

export const mappingValues = (importId: string, mapping: readonly (string | null)[]): FormValues => ({
  importId,
  mode: 'all',
  ...Object.fromEntries(mapping.map((name, place) => [`columns.${place}.means`, name ?? ''])),
})
