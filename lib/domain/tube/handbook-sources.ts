/**
 * Where each handbook figure comes from, spelled out once.
 *
 * "published" was read in the page or sheet named. "from memory" was recalled
 * by someone who knows the books and not looked up; it is shown as such, with
 * how sure the memory is, until a sheet is seen.
 */
import type { Provenance } from './tube-variant'

type Confidence = 'high' | 'medium' | 'low'
const CONFIDENCES: readonly Confidence[] = ['high', 'medium', 'low']

const RECALLED = {
  us: 'US receiving-tube handbooks and data sheets',
  eu: 'European valve data handbooks',
  uk: 'original British sheets of the KT series',
  lists: 'Common Valve, Signal Corps VT and equivalents lists',
  worked: 'worked out from other figures of the same type',
} as const

const PUBLISHED = {
  'sheet-6v6gta': 'a 6V6GTA data sheet, as transcribed on a builder’s page',
  'wiki-6v6': 'a tube encyclopaedia page on the 6V6 (Oktoda)',
  'wiki-ecc82': 'a tube encyclopaedia page on the ECC82 (Oktoda)',
  'encyclopaedia-6l6': 'an encyclopaedia article on the 6L6, quoting “Essential Characteristics” (1973)',
  'article-power-tubes': 'a magazine article, “Selecting a Power Tube”',
  'encyclopaedia-kt66':
    'an encyclopaedia article on the KT66, quoting the “Super Radiotron Valve Manual” (1962) and “Radio Valve Data” (8th edition, 1966)',
  'museum-kt66': 'a museum page on the KT66 (CV321, CV1075)',
  'encyclopaedia-el84': 'an encyclopaedia article on the EL84, figures labelled design-centre',
  'page-el34': 'a collector’s data page on the EL34',
  'encyclopaedia-12ax7': 'an encyclopaedia article on the 12AX7',
  'page-12ax7': 'a data page on the pinout and equivalents of the 12AX7',
  'encyclopaedia-6sn7': 'an encyclopaedia article on the 6SN7',
  'encyclopaedia-ef86': 'an encyclopaedia article on the EF86',
  'article-ecc81': 'an article on the ECC81 that names no source',
  'museum-2a3': 'a valve museum page on the 2A3',
  'sheet-300b': 'the present-day 300B data sheet',
  'sheet-5u4g': 'a present-day 5U4G data sheet',
  'article-5u4g': 'a magazine article on the 5U4',
  'article-7591': 'a magazine article on the 7591 family',
  'sheet-kt88s': 'a KT88S data sheet',
  inventory: 'a club’s inventory list',
  'alias-table': 'an alias table of a hobby project',
  'article-tube-types': 'a magazine article on tube types (December 2000)',
} as const

/** A figure a shop entered itself; what it was read from stands on the type's card. */
const SHOP = 'entered by this shop'

export type SourceKey = 'shop' | keyof typeof PUBLISHED | `${keyof typeof RECALLED}-${Confidence}`

function recalledProvenances(): [string, Provenance][] {
  return Object.entries(RECALLED).flatMap(([key, text]) =>
    CONFIDENCES.map((confidence): [string, Provenance] => [
      `${key}-${confidence}`,
      { basis: 'from-memory', confidence, text: `from memory: ${text}` },
    ]),
  )
}

const PROVENANCES: ReadonlyMap<string, Provenance> = new Map([
  ...recalledProvenances(),
  ['shop', { basis: 'shop-entry', confidence: null, text: SHOP }],
  ...Object.entries(PUBLISHED).map(([key, text]): [string, Provenance] => [
    key,
    { basis: 'published', confidence: null, text },
  ]),
])

export function provenanceOf(key: SourceKey): Provenance {
  const found = PROVENANCES.get(key)
  if (!found) throw new Error(`No handbook source is called ${key}`)
  return found
}
