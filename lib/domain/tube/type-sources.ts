/** Where the figures of one type come from, numbered in the order they are met on its card. */
import { provenanceOf } from './handbook-sources'
import type { Figure, HandbookRatings, HandbookType } from './handbook-type'
import type { OwnTubeType } from './tube-catalogue'

export type CardSource = { readonly number: number; readonly text: string }

export type CardSources = {
  readonly list: readonly CardSource[]
  /** Number of the source of a figure; 0 for one that stands nowhere on the card. */
  readonly numberOf: (source: Figure[1]) => number
}

const isRatings = (ratings: unknown): ratings is HandbookRatings => typeof ratings === 'object' && ratings !== null

const sourcesIn = (figures: object): Figure[1][] => Object.values(figures).map((figure: Figure) => figure[1])

function sourcesOf(type: HandbookType): readonly Figure[1][] {
  const ratings = [...type.variants.map((variant) => variant.ratings), type.otherSection].filter(isRatings)
  return [
    type.base.eiaSource,
    type.base.pinsSource,
    ...type.heaters.flatMap(({ volts, amps }) => [volts[1], amps[1]]),
    ...ratings.flatMap(({ limits }) => sourcesIn(limits)),
    ...type.rows.flatMap(({ figures }) => sourcesIn(figures)),
    ...type.otherNumbers.map(({ source }) => source),
    ...type.similar.map(({ source }) => source),
  ]
}

const SURENESS = { high: 'well remembered', medium: 'fairly sure', low: 'doubtful' } as const

function sourceText(source: Figure[1], type: HandbookType | OwnTubeType): string {
  const { basis, confidence, text } = provenanceOf(source)
  if (basis === 'shop-entry') return 'sourceText' in type ? `written down by this shop from: ${type.sourceText}` : text
  return confidence ? `${text}; ${SURENESS[confidence]}` : text
}

export function cardSources(type: HandbookType | OwnTubeType): CardSources {
  const keys = [...new Set(sourcesOf(type))]
  return {
    list: keys.map((key, place) => ({ number: place + 1, text: sourceText(key, type) })),
    numberOf: (source) => keys.indexOf(source) + 1,
  }
}
