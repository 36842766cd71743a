/**
 * Rows put aside for good: never fitted, only judged against.
 *
 * Rule, laid down before any error was seen: of every output type with five or more
 * usable rows, a quarter of them (rounded down), those with the smallest 32-bit FNV-1a
 * hash of "key label". The hash knows nothing of currents, so it cannot choose the easy
 * rows. `PUT_ASIDE` is the list that rule gave; it stands written out so that rows added
 * later (`ADDED_LATER`, and the 7189's row, then a curve of its own) cannot change it.
 * A test holds it against the rule on the rows of that day.
 */
import { HANDBOOK } from '@/lib/domain/tube/handbook'
import type { ModelRow } from './model-row'

/** Least number of rows of a type before any is put aside. */
const ENOUGH_ROWS = 5

export const PUT_ASIDE: readonly string[] = [
  '6V6 class A1 single, 315/225 V',
  '6L6 push-pull A1, 270 V',
  '6L6 class A1 single, 250 V cathode bias',
  'EL34 push-pull AB, 375 V supply, cathode bias (per valve)',
  'EL34 triode-connected single',
  'EL84 push-pull B, 250 V fixed',
  'EL84 triode-connected single',
  'KT88 class A characteristic, tetrode',
  '6K6GT class A1 single, 250 V',
  '6F6 triode-connected push-pull AB2, 350 V cathode bias',
  '6F6 class A1 single, 285 V',
  '300B 350 V, -74 V',
  '300B 450 V, -97 V',
]

export const ADDED_LATER: readonly string[] = [
  'KT88 triode-connected push-pull AB1, 349 V cathode bias',
  'KT88 triode-connected push-pull AB1, 422 V cathode bias',
]

export const rowName = (row: Pick<ModelRow, 'key' | 'label'>): string => `${row.key} ${row.label}`

const aside = new Set(PUT_ASIDE)
export const isPutAside = (row: ModelRow): boolean => aside.has(rowName(row))

/** FNV-1a, 32 bit, over the UTF-8 bytes. */
export function fnv1a(text: string): number {
  let hash = 0x811c9dc5
  for (const byte of new TextEncoder().encode(text)) hash = Math.imul(hash ^ byte, 0x01000193) >>> 0
  return hash
}

export function isOutputRow(row: ModelRow): boolean {
  const role = HANDBOOK.find((type) => type.id === row.typeId)?.role
  return role === 'output' && !row.key.includes(':')
}

/** What the rule gives for these rows. */
export function chosenByRule(rows: readonly ModelRow[]): readonly string[] {
  const keys = [...new Set(rows.filter(isOutputRow).map((row) => row.key))]
  return keys.flatMap((key) => {
    const names = rows.filter((row) => row.key === key).map(rowName)
    if (names.length < ENOUGH_ROWS) return []
    const sorted = [...names].sort((a, b) => fnv1a(a) - fnv1a(b))
    return sorted.slice(0, Math.floor(names.length / 4))
  })
}
