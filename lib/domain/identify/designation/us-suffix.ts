/**
 * Letters after a US receiving number, in the order the scheme writes them: ruggedised (W), envelope
 * (G, GT …), issue (A, B, C), ruggedised again, base (Y, X), export (E). "6L6WGB" is W + G + B.
 *
 * What is left over has no meaning in the scheme. A single letter that runs straight into letters
 * left over is not read on its own: the E of an unknown "EQ" is not "export".
 */
import type { Part, Suffix } from './designation-reading'

const GRAMMAR =
  /^(?<before>W[A-C]?)?(?<envelope>GT\/G|GT|MG|G|M|LT|LM|L|S)?(?<issue>[A-D])?(?<after>W[A-C]?)?(?<base>[YX])?(?<exported>E)?$/
/** An issue letter behind an envelope ('GC') is read all the same. */
const RUNS_ON = /(?:[ELMSXY]|(?<![GTW])[A-D])$/

export type SuffixReading = {
  readonly suffix: Suffix
  readonly text: string
  readonly rest: string
  readonly parts: readonly Part[]
}

type Groups = Readonly<Record<string, string | undefined>>

const ENVELOPES: Readonly<Record<string, readonly [Suffix['envelope'], string]>> = {
  G: ['G', 'glass, shouldered bulb (ST-12 to ST-16)'],
  GT: ['GT', 'glass, straight T-9 bulb'],
  'GT/G': ['GT/G', 'straight T-9 bulb, registered to replace both the G and the GT'],
  M: ['M', 'metal'],
  MG: ['MG', 'metal-glass'],
  L: ['L', 'locking base'],
  LT: ['L', 'locking base'],
  LM: ['L', 'locking base'],
  S: ['S', 'sprayed with a metal shield (older glass)'],
}

/** Of a G that carries a letter A to C the bulb is the maker's choice: 6L6GB and 6L6GC are straight. */
function envelopePart(text: string, issue: string | undefined): Part[] {
  const [, meaning] = ENVELOPES[text] ?? []
  if (!meaning) return []
  if (text === 'G' && issue)
    return [{ text, meaning: 'glass; the bulb of a later issue need not be shouldered', source: 'memory' }]
  return [{ text, meaning, source: 'retma' }]
}

const rugged = (text: string): Part => ({
  text,
  meaning: `ruggedised or military issue${text.length > 1 ? '; the second letter counts the issues' : ''}`,
  source: 'retma',
})

function partsOf(found: Groups): Part[] {
  const { before, envelope, issue, after, base, exported } = found
  return [
    ...(before ? [rugged(before)] : []),
    ...(envelope ? envelopePart(envelope, issue) : []),
    ...(issue ? [issuePart(issue)] : []),
    ...(after ? [rugged(after)] : []),
    ...(base ? [BASES[base as 'Y' | 'X']] : []),
    ...(exported ? [{ text: 'E', meaning: 'export', source: 'retma' } as const] : []),
  ]
}

const issuePart = (text: string): Part => ({
  text,
  meaning: 'later issue: may replace the earlier ones, not the other way',
  source: 'retma',
})

const BASES: Readonly<Record<'Y' | 'X', Part>> = {
  Y: { text: 'Y', meaning: 'low-loss base of mica-filled phenolic: brown, heat-resistant', source: 'retma' },
  X: { text: 'X', meaning: 'low-loss ceramic base', source: 'retma' },
}

function suffixOf({ before, envelope, issue, after, base }: Groups): Suffix {
  return {
    envelope: envelope ? (ENVELOPES[envelope]?.[0] ?? null) : null,
    issue: issue ?? null,
    rugged: before ?? after ?? null,
    base: (base as 'Y' | 'X' | undefined) ?? null,
  }
}

const OWN_MARK = /^[\s\-–—.]+/

/** "-QX" and "-Y" behind a dash are marks of their own; "-GC" is only carelessly written. */
function withoutDash(text: string): string {
  const bare = text.replace(OWN_MARK, '')
  return /^(?:GT?|W|MG)/.test(bare) ? bare : text
}

/** `text` is in capitals. The longest beginning that the scheme knows is taken. */
export function readUsSuffix(text: string): SuffixReading {
  const tidy = withoutDash(text).replace(/^((?:GT|G|W)[A-C]?)(?:\s+(?=[A-CGWYX]+$)|-(?=[A-CGW]+$))/, '$1')
  for (let length = tidy.length; length >= 0; length -= 1) {
    const [head, rest] = [tidy.slice(0, length), tidy.slice(length)]
    const found = GRAMMAR.exec(head)?.groups
    const runsOn = /^[A-Z]/.test(rest) && RUNS_ON.test(head)
    if (found && !runsOn)
      return { suffix: suffixOf(found), text: head, rest: rest.replace(OWN_MARK, ''), parts: partsOf(found) }
  }
  throw new Error(`No beginning of the suffix "${text}" could be read, not even an empty one`)
}
