/**
 * From a designation as people write it to the variant it names, in the handbook or
 * among the types the shop wrote down itself.
 *
 * Read in this order: the designation itself; another number of the same tube
 * (CV, VT, national); the number without a low-loss base letter Y; without the
 * ruggedised letters W, WA, WB, WC (then the plain type's figures only stand
 * in); without a last letter A, B or C (a later issue may replace the earlier one,
 * so the earlier one's figures are the careful ones to stand in). "JAN", with or
 * without maker letters, is dropped. Letters no
 * scheme knows are a maker's own and are left off last of all (identify/designation). Of several numbers
 * joined by a stroke ("EL34/6CA7") all that are known must be one type, and the
 * lowest plate rating among them is taken.
 * Suffix rules: RETMA type designation scheme. Numbers of merely similar types
 * are never resolved.
 */

import { readDesignation } from '../identify/designation/read-designation'
import { foldedDesignation as folded } from './folded-designation'
import { HANDBOOK } from './handbook'
import type { HandbookType, HandbookVariant } from './handbook-type'
import { typicalScreenShare } from './screen-share'
import type { OwnTubeType, TubeCatalogue } from './tube-catalogue'
import { openBase, openHeaters, openRatings, ratingsOf } from './tube-ratings'
import type { Resolution, TubeVariant } from './tube-variant'

type Found = {
  readonly type: HandbookType
  readonly variant: HandbookVariant
  readonly designation: string
  readonly resolution: Resolution
}

type Index = ReadonlyMap<string, Found>

function variantNamed(type: HandbookType, designation: string): HandbookVariant {
  const found = type.variants.find((variant) => variant.designations.includes(designation))
  if (!found) throw new Error(`Type ${type.id} has no variant ${designation}`)
  return found
}

function readIndex(types: readonly HandbookType[]): Index {
  const index = new Map<string, Found>()
  for (const type of types) {
    for (const variant of type.variants) {
      for (const designation of variant.designations) {
        index.set(folded(designation), { type, variant, designation, resolution: 'designation' })
      }
    }
  }
  for (const type of types) {
    for (const { number, kind, of } of type.otherNumbers) {
      if (index.has(folded(number))) throw new Error(`The number ${number} is given twice`)
      index.set(folded(number), { type, variant: variantNamed(type, of), designation: of, resolution: kind })
    }
  }
  return index
}

const PRINTED = readIndex(HANDBOOK)
/** Kept as long as the list itself: a page looks up dozens of designations in one. */
const OWN = new WeakMap<readonly OwnTubeType[], Index>()

function ownIndex({ ownTypes }: TubeCatalogue): Index {
  const known = OWN.get(ownTypes) ?? readIndex(ownTypes)
  OWN.set(ownTypes, known)
  return known
}

const MERELY_SIMILAR: ReadonlySet<string> = new Set(
  HANDBOOK.flatMap((type) => type.similar.map(({ number }) => folded(number))),
)

/** The lowest-rated writing comes first, so an unclear suffix never gains a rating. */
function withoutRuggedLetters(name: string): string[] {
  const plain = [name.replace(/W[ABC]?$/, ''), name.replace(/W(?=G[A-Z]*$)/, '')]
  return plain.filter((candidate) => candidate !== name)
}

/** What the shop wrote down itself is found under its very designation, before any reading of suffixes. */
function findOne(name: string, own: Index): Found | null {
  const exact = own.get(name) ?? PRINTED.get(name)
  if (exact) return exact
  const lowLossBase = /[A-Z]Y$/.test(name) ? PRINTED.get(name.slice(0, -1)) : undefined
  if (lowLossBase) return lowLossBase
  for (const candidate of withoutRuggedLetters(name)) {
    const found = PRINTED.get(candidate) ?? earlierIssue(candidate)
    if (found) return { ...found, resolution: 'special-quality' }
  }
  return earlierIssue(name)
}

function earlierIssue(name: string): Found | null {
  if (MERELY_SIMILAR.has(name) || !/[ABC]$/.test(name)) return null
  const found = PRINTED.get(name.slice(0, -1))
  return found ? { ...found, resolution: 'later-issue' } : null
}

const JAN = /^\s*JAN[\s-]*/i
const MAKER_LETTERS = /^[A-Z]{2,4}[\s-]+(?=\d)/i

function findWritten(text: string, own: Index): Found | null {
  const asWritten = findOne(folded(text), own)
  if (asWritten || !JAN.test(text)) return asWritten
  const withoutJan = text.replace(JAN, '')
  return findOne(folded(withoutJan), own) ?? findOne(folded(withoutJan.replace(MAKER_LETTERS, '')), own)
}

/** "EL34QX": letters no scheme knows are the maker's own, and the number before them is looked up. */
function withoutOwnLetters(text: string, own: Index): Found | null {
  const { standard, ownMark, alsoNamed } = readDesignation(text)
  if (standard === null || ownMark === null || alsoNamed.length > 0 || MERELY_SIMILAR.has(folded(text))) return null
  const found = findWritten(standard, own)
  return found && { ...found, resolution: 'own-letters' }
}

const plateLimit = ({ type, variant }: Found): number =>
  ratingsOf(type, variant)?.limits.plateWatts?.[0] ?? Number.POSITIVE_INFINITY

function findJoined(text: string, own: Index): Found | null {
  const parts = text.split('/').map((part) => findWritten(part, own))
  const found = parts.filter((part) => part !== null).sort((a, b) => plateLimit(a) - plateLimit(b))
  const [first] = found
  if (!first || found.some((one) => one.type.id !== first.type.id)) return null
  return first
}

const STANDING_IN: ReadonlySet<Resolution> = new Set(['special-quality', 'later-issue', 'own-letters'])

function tubeVariant({ type, variant, designation, resolution }: Found, asked: string): TubeVariant {
  const ratings = ratingsOf(type, variant)
  return {
    typeId: type.id,
    designation,
    asked,
    resolution,
    family: type.family,
    role: type.role,
    tubeClass: type.tubeClass,
    base: openBase(type),
    heaters: openHeaters(type),
    ratings: ratings && openRatings(ratings),
    ratingsStandIn: variant.ratings === 'lowest-of-type' || STANDING_IN.has(resolution),
    otherSection: type.otherSection && openRatings(type.otherSection),
    typicalScreenShare: typicalScreenShare(type),
    notes: type.notes,
  }
}

/** Null when the designation is not known here. Never a guess at something near. */
export function findTubeType(designation: string, catalogue: TubeCatalogue): TubeVariant | null {
  const text = designation.trim()
  if (text === '') return null
  const own = ownIndex(catalogue)
  const found =
    findWritten(text, own) ?? (text.includes('/') ? findJoined(text, own) : null) ?? withoutOwnLetters(text, own)
  return found && tubeVariant(found, text.toUpperCase().replace(/\s+/g, ' '))
}
