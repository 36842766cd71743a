/**
 * A job number that survives the telephone: a running number and a check digit,
 * "1047-0". One wrong digit and nearly every swap of neighbours is caught.
 * Check digit: Luhn, as in ISO/IEC 7812-1 annex B (from memory).
 */
import { fail, ok, type Result } from '@/lib/domain/result'

export const FIRST_JOB = 1001

export type JobNumberFault = 'not-a-job-number' | 'check-digit-wrong'

export function checkDigit(digits: string): number {
  let total = 0
  for (const [fromRight, digit] of [...digits].reverse().entries()) {
    const doubled = Number(digit) * (fromRight % 2 === 0 ? 2 : 1)
    total += doubled > 9 ? doubled - 9 : doubled
  }
  return (10 - (total % 10)) % 10
}

export const jobNumber = (running: number): string => `${running}-${checkDigit(String(running))}`

/** Takes "1047-0", "1047 3" or "10470" and gives back "1047-0". */
export function readJobNumber(typed: string): Result<string, JobNumberFault> {
  const digits = typed.replace(/[\s-]/g, '')
  if (!/^\d{5,10}$/.test(digits)) return fail('not-a-job-number')
  const running = digits.slice(0, -1)
  return checkDigit(running) === Number(digits.slice(-1))
    ? ok(`${running}-${digits.slice(-1)}`)
    : fail('check-digit-wrong')
}
