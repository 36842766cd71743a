import * as z from 'zod/mini'
import { after, box, text, version } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import type { Maker } from '@/lib/domain/stock/maker'

/** Written with commas or spaces; each must be of one form. */
const marks = (label: string, form: RegExp, example: string) =>
  box((typed, refuse): readonly string[] => {
    const all = typed
      .toUpperCase()
      .split(/[\s,;]+/)
      .filter(Boolean)
    const odd = all.find((one) => !form.test(one))
    if (odd !== undefined)
      return refuse(`${label}: “${odd.slice(0, 20)}” does not look like one. They look like ${example}.`)
    if (all.length > 40) return refuse(`${label}: ${all.length} are too many; at most 40 fit.`)
    return [...new Set(all)]
  })

export const makerSchema = after(
  z.object({
    id: text({ label: 'Maker' }),
    version: version(),
    name: text({ label: 'Name', required: true, max: 80 }),
    sourceCodes: marks('Source codes', /^\d{3,4}$/, '999'),
    janLetters: marks('JAN letters', /^[A-Z]{2,4}$/, 'CXX'),
    factoryMarks: marks('Factory marks', /^\S{1,4}$/, 'B or Δ'),
    note: text({ label: 'Note', max: 500 }),
  }),
  ({ id, version: saved, ...details }) => ({ id: id || null, version: saved, details }),
)

export function makerValues(maker: Maker | null): FormValues {
  if (!maker) return { id: '', version: '0', name: '', sourceCodes: '', janLetters: '', factoryMarks: '', note: '' }
  const { id, version: saved, name, note } = maker
  const listed = {
    sourceCodes: maker.sourceCodes.join(', '),
    janLetters: maker.janLetters.join(', '),
    factoryMarks: maker.factoryMarks.join(', '),
  }
  return sheetValues({ id, version: String(saved), name, ...listed, note })
}
