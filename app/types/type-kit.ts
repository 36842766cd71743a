/** What the sheet of a type needs to know of the shop: plain values, so that they reach the browser. */
import type { Option } from '@/app/_components/form/form-fields'
import { typeModel } from '@/lib/domain/model/type-model'
import { HANDBOOK } from '@/lib/domain/tube/handbook'
import { knownTypes, type TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { designationsOf } from '@/lib/domain/tube/type-search'
import type { WordSet } from '@/lib/domain/words'

export type TypeKit = {
  readonly words: WordSet
  readonly families: readonly string[]
  /** Types whose curves may be borrowed. */
  readonly curves: readonly Option[]
}

const NAMED = 4

export function typeKit({ words, ...catalogue }: TubeCatalogue & { readonly words: WordSet }): TypeKit {
  const families = [...new Set(knownTypes(catalogue).map(({ family }) => family))]
  const curves = HANDBOOK.filter(({ id }) => typeModel(id).ok).map((type) => {
    const names = designationsOf(type)
    const more = names.length > NAMED ? ' …' : ''
    return { value: type.id, text: `${names.slice(0, NAMED).join(', ')}${more}: ${type.className}` }
  })
  return { words, families: families.toSorted((a, b) => a.localeCompare(b, 'en', { numeric: true })), curves }
}
