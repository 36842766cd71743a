/** The type that an etched code names: "Xf2" is the EL34, change 2. Which change says an order and, of itself, no year. */
import { ETCHED_CODES } from '../knowledge/numbers/etched-codes'
import type { KnowledgeSourceKey } from '../knowledge-source'

export type EtchedType = {
  readonly type: string
  /** As it is etched: "Xf2" of a "XF2" that was typed. */
  readonly code: string
  readonly sentence: string
  readonly source: KnowledgeSourceKey
}

/** The code with its change; alone only where a figure in it tells it from a word. */
export function etchedType(given: string): EtchedType | null {
  const text = given.toUpperCase()
  for (const { code, type, source } of ETCHED_CODES) {
    const rest = text.slice(code.length)
    const isOf = text.startsWith(code.toUpperCase()) && (/^\d$/.test(rest) || (rest === '' && /\d/.test(code)))
    if (!isOf) continue
    const change =
      rest === '' ? '' : `, change ${rest}: changes are counted in their order, which says no year by itself`
    return {
      type,
      code: code + rest,
      source,
      sentence: `Read as the etched type code ${code} of the ${type}${change}.`,
    }
  }
  return null
}
