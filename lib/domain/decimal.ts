/**
 * Reading a number as people type it at a bench: "12.5", "12,5", " -38 ".
 *
 * An empty box is `empty`, never zero. A comma or a point is the decimal mark;
 * with both, or with several of one, the last mark decides only when the rest
 * groups digits by three ("1.234,5" and "1,234.5"). A single mark is always
 * the decimal mark: "1,234" is 1.234, and the form shows what was understood.
 */
import { fail, ok, type Result } from './result'

export type DecimalFault = 'empty' | 'not-a-number'

const PLAIN = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/
const GROUPED_BY_COMMA = /^[+-]?\d{1,3}(,\d{3})+\.\d+$|^[+-]?\d{1,3}(,\d{3}){2,}$/
const GROUPED_BY_POINT = /^[+-]?\d{1,3}(\.\d{3})+,\d+$|^[+-]?\d{1,3}(\.\d{3}){2,}$/

/** The number as a canonical decimal string ("-12.5"), for exact money. */
export function readDecimalText(typed: string): Result<string, DecimalFault> {
  // A thin or no-break space between digits and a typographic minus come in by copy and paste.
  const text = typed.replace(/[\s\u00a0\u202f]/g, '').replace(/\u2212/g, '-')
  if (text === '') return fail('empty')
  if (PLAIN.test(text)) return ok(text.replace(',', '.').replace(/^\+/, ''))
  if (GROUPED_BY_COMMA.test(text)) return ok(text.replace(/,/g, '').replace(/^\+/, ''))
  if (GROUPED_BY_POINT.test(text)) return ok(text.replace(/\./g, '').replace(',', '.').replace(/^\+/, ''))
  return fail('not-a-number')
}

export function readDecimal(typed: string): Result<number, DecimalFault> {
  const text = readDecimalText(typed)
  if (!text.ok) return text
  const value = Number(text.value)
  return Number.isFinite(value) ? ok(value) : fail('not-a-number')
}

/**
 * Exact whole steps of 10^-places: "12,5" with 2 places is 1250.
 * More decimals than places are refused, so nothing is rounded unseen.
 */
export function readFixed(typed: string, places: number): Result<number, DecimalFault | 'too-many-decimals'> {
  const text = readDecimalText(typed)
  if (!text.ok) return text
  const [whole = '', fraction = ''] = text.value.split('.')
  if (fraction.replace(/0+$/, '').length > places) return fail('too-many-decimals')
  const digits = `${whole}${fraction.slice(0, places).padEnd(places, '0')}`
  const steps = Number(digits === '' || digits === '-' ? '0' : digits)
  return Number.isSafeInteger(steps) ? ok(steps === 0 ? 0 : steps) : fail('not-a-number')
}
