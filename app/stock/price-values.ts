/** The three neighbours of a price as a form carries them: texts to be shown, which no box holds and no save reads. */
import type { FormValues } from '@/app/_components/form/form-state'
import type { PriceLine } from '@/lib/domain/stock/price-lines'

const HEAD = 'prices.'

export const priceValues = (about: string, lines: readonly PriceLine[]): FormValues => ({
  [`${HEAD}about`]: about,
  ...Object.fromEntries(lines.map(({ label, text }) => [`${HEAD}${label}`, text])),
})

export type ShownPrices = { readonly about: string; readonly lines: readonly PriceLine[] }

/** Null: not looked up. */
export function shownPrices(values: FormValues): ShownPrices | null {
  const about = values[`${HEAD}about`]
  if (about === undefined) return null
  const lines = Object.entries(values).flatMap(([name, text]) =>
    name.startsWith(HEAD) && name !== `${HEAD}about` ? [{ label: name.slice(HEAD.length), text }] : [],
  )
  return { about, lines }
}
