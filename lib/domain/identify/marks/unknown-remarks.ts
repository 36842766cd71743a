/** What can be said of a number that names no type here. */
import { foldedDesignation } from '../../tube/folded-designation'
import { knownTypes, type TubeCatalogue } from '../../tube/tube-catalogue'
import type { Remark } from '../designation/designation-reading'
import { latinWritings } from '../designation/latin-writings'
import { CYRILLIC_LIKENESSES } from '../knowledge/numbers/cyrillic-likenesses'
import type { Named } from './named'

/** Read or not, there is no type of it here. */
function unknownRemark({ reading, from }: Named): Remark {
  const { asked, standard } = reading
  if (from === 'date')
    return { sentence: `The etched code is of the ${asked}, a type that is not known here.`, source: 'handbook' }
  if (standard === null)
    return { sentence: `“${asked}” is no number known here: kept as text, it weighs nothing.`, source: 'practice' }
  const sentence = `${asked} reads as a number, but no type of it is known here: a sheet of its own has to tell base, heater and ratings.`
  return { sentence, source: 'handbook' }
}

/** What is only near a type that is known here: told, never taken for it. */
function cyrillicRemarks({ reading }: Named): Remark[] {
  const asked = foldedDesignation(reading.asked)
  return CYRILLIC_LIKENESSES.filter(({ number }) =>
    [number, ...latinWritings(number)].some((writing) => QUALITY_BEHIND(writing).test(asked)),
  ).map(({ number, sentence, source }) => ({ sentence: `${number}: ${sentence}`, source }))
}

const QUALITY_BEHIND = (writing: string) => new RegExp(`^${writing}[ВЕДИКBEDIKV]{0,2}$`)

/** A number that the handbook lists as merely similar: told, never taken for the type. */
function similarRemarks({ reading }: Named, catalogue: TubeCatalogue): Remark[] {
  const asked = foldedDesignation(reading.standard ?? reading.asked)
  const types = knownTypes(catalogue).filter(({ similar }) =>
    similar.some(({ number }) => foldedDesignation(number) === asked),
  )
  if (asked === '' || types.length === 0) return []
  const names = types.map(({ id }) => id).join(' and ')
  const sentence = `${reading.asked} is listed as similar to ${names}, not as the same: check base, heater and ratings.`
  return [{ sentence, source: 'handbook' }]
}

export const unknownRemarks = (named: Named, catalogue: TubeCatalogue): readonly Remark[] => [
  unknownRemark(named),
  ...similarRemarks(named, catalogue),
  ...cyrillicRemarks(named),
]
