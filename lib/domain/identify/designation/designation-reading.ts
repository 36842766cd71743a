/** A type number taken apart: what each piece of the print says, and by which scheme. */
import type { KnowledgeSourceKey } from '../knowledge-source'

export type Scheme =
  | 'us-receiving'
  | 'us-industrial'
  | 'us-older'
  | 'european'
  | 'british-letters'
  | 'common-valve'
  | 'special-quality-m'
  | 'service-vt'
  | 'british-service'
  | 'cyrillic'
  | 'not-recognised'

export type Part = {
  readonly text: string
  readonly meaning: string
  readonly source: KnowledgeSourceKey
}

export type Remark = { readonly sentence: string; readonly source: KnowledgeSourceKey }

/** What the letters after a US number say. Null: the print does not say. */
export type Suffix = {
  readonly envelope: 'G' | 'GT' | 'GT/G' | 'M' | 'MG' | 'L' | 'S' | null
  /** A, B or C: the issue. */
  readonly issue: string | null
  /** W, WA, WB… */
  readonly rugged: string | null
  /** Y: brown mica-filled phenolic. X: ceramic. */
  readonly base: 'Y' | 'X' | null
}

export const NO_SUFFIX: Suffix = { envelope: null, issue: null, rugged: null, base: null }

export type DesignationReading = {
  /** As given, tidied. */
  readonly asked: string
  readonly scheme: Scheme
  /** "JAN-" before the number. */
  readonly jan: boolean
  /** Maker letters after JAN; whose they are is for the shop's own list. */
  readonly janMaker: string | null
  /** The number with everything its scheme knows: "6L6GC" of "6L6GC-QX", "EL34" of "EL34QX", "CV4004". Null: not read. */
  readonly standard: string | null
  /** The number without any suffix: "6L6", "EL34". */
  readonly stem: string | null
  /** Letters behind it that the scheme does not know: a maker's or dealer's own. */
  readonly ownMark: string | null
  readonly suffix: Suffix
  readonly parts: readonly Part[]
  readonly remarks: readonly Remark[]
  /** Further numbers joined by a stroke: the "6CA7" of "EL34/6CA7". */
  readonly alsoNamed: readonly DesignationReading[]
}

/** What one scheme makes of the text; null when the text is none of its numbers. */
export type SchemeReading = Omit<DesignationReading, 'asked' | 'jan' | 'janMaker' | 'alsoNamed'>

export const ownMarkParts = (ownMark: string | null, scheme: string): Part[] =>
  ownMark === null
    ? []
    : [
        {
          text: ownMark,
          meaning: `no meaning in the ${scheme}: a maker’s or dealer’s own mark`,
          source: 'memory',
        },
      ]
