/** What one mark on a bottle names: versions, a type, a service. */
import { foldedDesignation } from '../../tube/folded-designation'
import type { DesignationReading } from '../designation/designation-reading'
import type { KnowledgeSourceKey } from '../knowledge-source'
import type { Service, Version } from '../version'
import { writingsOf } from '../versions'

export type Named = {
  readonly reading: DesignationReading
  readonly from: 'print' | 'codes' | 'date'
  /** Where it is known from that the mark means this type. */
  readonly basis: KnowledgeSourceKey
  /** Designations of the versions it names. */
  readonly versions: ReadonlySet<string>
  readonly types: ReadonlySet<string>
  /** A number without any suffix: 6V6. Names its stem's glass versions too, in careless modern writing. */
  readonly bareStem: string | null
  readonly service: Service | null
}

const SERVICES: Readonly<Partial<Record<DesignationReading['scheme'], Service>>> = {
  'common-valve': 'common-valve',
  'special-quality-m': 'common-valve',
  'service-vt': 'signal-corps',
  'british-service': 'british-service',
}

const numbersOf = (reading: DesignationReading): readonly DesignationReading[] => [reading, ...reading.alsoNamed]

/** The whole with a maker's letters first (ECC803S is a number of its own), then what the scheme knows. */
export function listed(reading: DesignationReading, versions: readonly Version[]): Version[] {
  const { standard, ownMark } = reading
  if (standard === null) {
    const whole = foldedDesignation(reading.asked)
    return whole === '' ? [] : versions.filter((version) => writingsOf(version).includes(whole))
  }
  for (const writing of [standard + (ownMark ?? ''), standard].map(foldedDesignation)) {
    const found = versions.filter((version) => writingsOf(version).includes(writing))
    if (found.length > 0) return found
  }
  return []
}

export function ofStem(reading: DesignationReading, versions: readonly Version[]): Version[] {
  return reading.stem === null ? [] : versions.filter(({ stem }) => stem === reading.stem)
}

export const isBare = ({ scheme, standard, stem }: DesignationReading): boolean =>
  scheme === 'us-receiving' && standard === stem

/** With a maker's own letters behind it a bare 6L6 is seldom the metal one: it may be any version of its stem. */
const isMeant =
  ({ ownMark }: DesignationReading) =>
  ({ envelope }: Version): boolean =>
    ownMark === null || envelope !== 'metal'

export type Mark = Pick<Named, 'reading' | 'from' | 'basis'>

export function namedBy({ reading, from, basis }: Mark, versions: readonly Version[]): Named {
  const exact = numbersOf(reading).flatMap((one) => listed(one, versions).filter(isMeant(one)))
  const stems = exact.length > 0 ? [] : numbersOf(reading).flatMap((one) => ofStem(one, versions))
  const bare = numbersOf(reading).find(isBare)
  return {
    ...{ reading, from, basis },
    versions: new Set(exact.map(({ designation }) => designation)),
    types: new Set([...exact, ...stems].map(({ typeId }) => typeId)),
    bareStem: bare?.stem ?? null,
    service: reading.jan ? 'jan' : (SERVICES[reading.scheme] ?? null),
  }
}
