/**
 * What a print says for a case, as the ln of a weight. Of bottles of one version with a number on them, for each
 * that bears its own: 1 in 6 has the suffix left off, 1 in 30 bears another version of the type, 1 in 300 another
 * type, and as many a number of no list. A share is spread over the numbers it can fall on. Relabelling is as old as the
 * trade, so construction, which has several witnesses, outranks print.
 */
import { STRENGTHS } from '../knowledge/strength'
import type { Named } from '../marks/named'
import type { Printed } from '../marks/printed'
import type { Version } from '../version'
import type { Case } from './case'

export type PrintFit =
  | 'named'
  | 'suffix-left-off'
  | 'other-version'
  | 'other-type'
  | 'number-not-known'
  | 'nothing-known'

export function printFit(named: Named, version: Version | null): PrintFit {
  const isKnown = named.types.size > 0
  if (version === null) return isKnown ? 'other-type' : 'nothing-known'
  if (!isKnown) return 'number-not-known'
  if (named.versions.has(version.designation)) return 'named'
  if (named.bareStem !== null && version.stem === named.bareStem) return 'suffix-left-off'
  return named.types.has(version.typeId) ? 'other-version' : 'other-type'
}

/** ln of 300: relabelled as another type, or bearing a number of no list. */
const MISNAMED = Math.log(300)

/** Among how many numbers a wrong print can fall. */
export type Spread = { readonly all: number; readonly ofType: ReadonlyMap<string, number> }

export function spreadOf(versions: readonly Version[]): Spread {
  const ofType = new Map<string, number>()
  for (const { typeId } of versions) ofType.set(typeId, (ofType.get(typeId) ?? 0) + 1)
  return { ofType, all: versions.length }
}

/** ln, at least 0: how much less likely this print is than the version's own number. */
export function printPenalty(fit: PrintFit, version: Version | null, { all, ofType }: Spread): number {
  const ofThis = version ? (ofType.get(version.typeId) ?? 1) : 0
  switch (fit) {
    case 'named':
    case 'nothing-known':
      return 0
    case 'suffix-left-off':
      return STRENGTHS.fair
    case 'other-version':
      return STRENGTHS.strong + Math.log(Math.max(1, ofThis - 1))
    case 'other-type':
      return MISNAMED + Math.log(Math.max(1, all - ofThis))
    case 'number-not-known':
      return MISNAMED
  }
}

/** A print that leaves the suffix off says little; one of another version speaks against. */
const LEVEL = STRENGTHS.fair + STRENGTHS.slight

export const printWeight = (named: Named, version: Version | null, spread: Spread): number =>
  LEVEL - printPenalty(printFit(named, version), version, spread)

/**
 * A service mark that was found, or was not although there is print: marks rub off. Of what is not known here a mark
 * is taken to be as rare as a service is.
 */
export function serviceWeight({ named, services }: Printed, { service }: Case): number {
  if (named.length === 0) return 0
  if (services.size > 0) {
    if (service === null) return -STRENGTHS.fair
    return services.has(service.service) ? 0 : -STRENGTHS.decides
  }
  return service === null || service.service === 'civil' ? 0 : -STRENGTHS.fair
}
