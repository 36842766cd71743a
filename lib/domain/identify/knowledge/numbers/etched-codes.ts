/**
 * The first line of a European etched code: one to three characters name the type, the next counts the changes of its
 * make. The full lists have over a thousand codes, told apart by capitals too; here are those that were read in a
 * page, and those recalled without a doubt. No other is guessed at. Pages that list codes: two collectors' pages with one
 * maker group's own list (GA), one on the GZ37 (IS), two on the ECC83 (I6), one with years (mC, F9, I6).
 */
import type { KnowledgeSourceKey } from '../../knowledge-source'

export type EtchedCode = {
  /** As etched: capitals and small letters. */
  readonly code: string
  readonly type: string
  readonly source: KnowledgeSourceKey
}

export const ETCHED_CODES: readonly EtchedCode[] = [
  { code: 'I6', type: 'ECC83', source: 'etched-type' },
  { code: 'GA', type: 'ECC88', source: 'etched-type' },
  { code: 'IS', type: 'GZ37', source: 'etched-type' },
  { code: 'mC', type: 'ECC83', source: 'etched-change' },
  { code: 'F9', type: 'ECC83', source: 'etched-change' },
  { code: 'K6', type: 'ECC82', source: 'memory' },
  { code: 'Xf', type: 'EL34', source: 'memory' },
  { code: 'rX', type: 'EL84', source: 'memory' },
  { code: '9r', type: 'EF86', source: 'memory' },
  { code: 'f3', type: 'GZ34', source: 'memory' },
]

export type ChangeYears = {
  readonly code: string
  readonly span: readonly [from: number, to: number]
  readonly note: string
}

/** As one page gives them for one factory: approximate. Of other changes only their order is known. */
export const CHANGE_YEARS: readonly ChangeYears[] = [
  { code: 'mC1', span: [1955, 1956], note: ', long plates' },
  { code: 'F91', span: [1957, 1958], note: ', long plates' },
  { code: 'F92', span: [1959, 1959], note: ', long plates' },
  { code: 'I61', span: [1959, 1964], note: ', short plates' },
]
