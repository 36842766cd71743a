/**
 * The shop's own short code on one tube: "T-0147". Capital letters, digits and
 * single hyphens, at least one digit. Shop rule.
 */
export const LONGEST_MARK = 16
export const FIRST_TUBE_NUMBER = 1

const MARK = /^[A-Z0-9]+(-[A-Z0-9]+)*$/

/** As it is written down; null when it is no mark. */
export function readMark(typed: string): string | null {
  const mark = typed
    .normalize('NFKC')
    .trim()
    .toUpperCase()
    .replace(/[\u2010-\u2014\u2212]/g, '-')
    .replace(/\s+/g, '-')
  return MARK.test(mark) && /\d/.test(mark) && mark.length <= LONGEST_MARK ? mark : null
}

/** Mark of the running number: 147 is "T-0147". */
export const markOfNumber = (number: number): string => `T-${String(number).padStart(4, '0')}`
