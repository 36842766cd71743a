/** What a pass phrase must be before it is hashed. Length only: NIST SP 800-63B, 5.1.1.2 (from memory). */
import { fail, ok, type Result } from '@/lib/domain/result'

export const SHORTEST_PASS_PHRASE = 10
export const LONGEST_PASS_PHRASE = 200

export type PassPhraseFault = 'too-short' | 'too-long'

export function checkPassPhrase(phrase: string): Result<string, PassPhraseFault> {
  if ([...phrase].length < SHORTEST_PASS_PHRASE) return fail('too-short')
  return [...phrase].length > LONGEST_PASS_PHRASE ? fail('too-long') : ok(phrase)
}
