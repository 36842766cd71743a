/** Which labels are wanted, as an address says it. */
import { readMark } from '../tube-mark'

export const MOST_LABELS = 500

export type WantedMarks = { readonly marks: readonly string[]; readonly unreadable: readonly string[] }

/** Marks with spaces, commas or lines between them; "T-0101..T-0120" is a run of numbers. */
export function wantedMarks(typed: string): WantedMarks {
  const words = typed.split(/[\s,;]+/).filter(Boolean)
  const found = words.map((word) => ({ word, marks: marksOf(word) }))
  const marks = [...new Set(found.flatMap((each) => each.marks))].slice(0, MOST_LABELS)
  return { marks, unreadable: found.filter((each) => each.marks.length === 0).map(({ word }) => word) }
}

const RUN = /^(.*?)(\d+)\.\.+(?:.*?)(\d+)$/

function marksOf(word: string): string[] {
  const run = RUN.exec(word)
  if (!run) return [readMark(word)].filter((mark) => mark !== null)
  const [, head = '', from = '', to = ''] = run
  const [first, last] = [Number(from), Number(to)]
  if (last < first || last - first >= MOST_LABELS) return []
  return Array.from({ length: last - first + 1 }, (_, place) =>
    String(first + place).padStart(from.length, '0'),
  ).flatMap((number) => readMark(`${head}${number}`) ?? [])
}
