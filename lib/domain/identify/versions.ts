/** Every version of the types a shop knows, worked out from the handbook by the suffix rules. */
import { foldedDesignation } from '../tube/folded-designation'
import type { HandbookType, OtherNumber } from '../tube/handbook-type'
import { knownTypes, type TubeCatalogue } from '../tube/tube-catalogue'
import { PIN_COUNTS } from '../tube/tube-ratings'
import type { DesignationReading } from './designation/designation-reading'
import { latinWritings } from './designation/latin-writings'
import { readDesignation } from './designation/read-designation'
import { FURTHER_VERSIONS, REGISTERED_AS_METAL } from './knowledge/numbers/further-versions'
import { DESIGNATION_YEARS, TYPE_YEARS } from './knowledge/version-years'
import type { Envelope, Service, ServiceNumber, Version, VersionYears } from './version'

type Named = Pick<Version, 'designation' | 'standing' | 'of'> & { readonly services: readonly ServiceNumber[] }

function envelopeOf({ suffix, standard, ownMark }: DesignationReading): Envelope {
  if (suffix.envelope === 'GT' || suffix.envelope === 'GT/G') return 'GT'
  if (suffix.envelope === 'G') return suffix.issue === null ? 'G' : 'later-G'
  // A 6V6 with a maker's own letters is no metal one: the mark is new production or a dealer's.
  return standard !== null && ownMark === null && REGISTERED_AS_METAL.includes(standard) ? 'metal' : 'glass'
}

const isHeater = (electrode: string): boolean => /^[hf](?:[+-]|$| )/.test(electrode)

function heaterPins({ base: { pins } }: HandbookType): string | null {
  const wired = Object.entries(pins ?? {})
  const ends = wired.filter(([, electrode]) => isHeater(electrode)).map(([pin]) => pin)
  const tap = wired.find(([, electrode]) => electrode.includes('centre tap'))?.[0]
  return ends.length === 2 ? [...ends, ...(tap ? [tap] : [])].join('-') : null
}

function cathode({ base: { pins } }: HandbookType): Version['cathode'] {
  const electrodes = Object.values(pins ?? {})
  if (electrodes.length === 0) return null
  return electrodes.some((one) => one.startsWith('f')) ? 'filament' : 'sleeve'
}

/** A pin without a connection may be missing on an octal base only. */
function pinRange({ base: { name, pins } }: HandbookType): Version['pins'] {
  const most = PIN_COUNTS[name]
  if (name !== 'octal') return [most, most]
  if (pins === null) return null
  const wired = Object.values(pins).filter((electrode) => !/^(?:nc|ic|shell|base)/.test(electrode))
  return [wired.length, most]
}

function yearsOf(designation: string, typeId: string): VersionYears | null {
  const [from, source] = DESIGNATION_YEARS[designation] ?? TYPE_YEARS[typeId] ?? []
  return from === undefined || source === undefined ? null : { from, to: null, source }
}

const CIVIL: ServiceNumber = { service: 'civil', number: null, note: null }
const JAN: ServiceNumber = { service: 'jan', number: null, note: null }

/** JAN names a tube by its US number. */
const janToo = ({ scheme }: DesignationReading): boolean => scheme === 'us-receiving' || scheme === 'us-industrial'

function versionOf(type: HandbookType, named: Named): Version {
  const { designation } = named
  const reading = readDesignation(designation)
  return {
    ...named,
    typeId: type.id,
    stem: reading.ownMark === null ? reading.stem : null,
    typeName: type.variants[0]?.designations[0] ?? type.id,
    aliases: [],
    envelope: envelopeOf(reading),
    baseLetter: reading.suffix.base,
    rugged: reading.suffix.rugged !== null || named.standing === 'special-quality',
    base: type.base.name,
    tubeClass: type.tubeClass,
    heaterPins: heaterPins(type),
    cathode: cathode(type),
    pins: pinRange(type),
    years: yearsOf(designation, type.id),
    services: janToo(reading) ? [...named.services, JAN] : named.services,
  }
}

function serviceOf(number: string): Exclude<Service, 'civil' | 'jan'> | null {
  switch (readDesignation(number).scheme) {
    case 'common-valve':
    case 'special-quality-m':
      return 'common-valve'
    case 'service-vt':
      return 'signal-corps'
    case 'british-service':
      return 'british-service'
    default:
      return null
  }
}

const CYRILLIC = /[А-Я]/

/** A service number of the very tube is a service of its version; anything else is a version of its own. */
function otherVersions(type: HandbookType): Named[] {
  const latin = new Set(type.otherNumbers.flatMap(({ number }) => (CYRILLIC.test(number) ? latinWritings(number) : [])))
  return type.otherNumbers.flatMap((other) => {
    const { number, kind, of } = other
    const service = serviceOf(number)
    if ((service !== null && kind === 'other-number') || latin.has(number.toUpperCase())) return []
    const services: ServiceNumber[] = service ? [{ service, number, note: other.note }] : [CIVIL]
    return [{ designation: number, standing: kind, of, services }]
  })
}

const serviceNumber = ({ number, note }: OtherNumber): ServiceNumber | null => {
  const service = serviceOf(number)
  return service && { service, number, note }
}

/** "300B (1950 sheet)" tells two sheets apart, not two prints. */
const isPrinted = (designation: string): boolean => !designation.includes('(')

function listedVersions(type: HandbookType): Named[] {
  return type.variants.flatMap(({ designations }) =>
    designations.filter(isPrinted).map((designation): Named => {
      const numbers = type.otherNumbers.filter(({ kind, of }) => kind === 'other-number' && of === designation)
      const services = numbers.map(serviceNumber).filter((one) => one !== null)
      return { designation, standing: 'designation', of: null, services: [CIVIL, ...services] }
    }),
  )
}

const furtherVersions = (type: HandbookType): Named[] =>
  FURTHER_VERSIONS.filter(({ typeId }) => typeId === type.id).map(({ designation, of }) => ({
    ...{ designation, of, services: [CIVIL] },
    standing: readDesignation(designation).suffix.rugged === null ? 'other-number' : 'special-quality',
  }))

function versionsOfType(type: HandbookType): Version[] {
  const named = [...listedVersions(type), ...otherVersions(type), ...furtherVersions(type)]
  const numbers = type.otherNumbers.map(({ number }) => number)
  return named.map((one) => {
    const latin = CYRILLIC.test(one.designation) ? latinWritings(one.designation) : []
    const listed = numbers.filter((number) => latin.includes(number.toUpperCase()))
    return { ...versionOf(type, one), aliases: [...new Set([...listed, ...latin])] }
  })
}

const KNOWN = new WeakMap<TubeCatalogue['ownTypes'], readonly Version[]>()

/** Worked out once for a list of own types. */
export function knownVersions(catalogue: TubeCatalogue): readonly Version[] {
  const known = KNOWN.get(catalogue.ownTypes) ?? knownTypes(catalogue).flatMap(versionsOfType)
  KNOWN.set(catalogue.ownTypes, known)
  return known
}

/** Writings by which a print names this version, folded. */
export const writingsOf = ({ designation, aliases, services }: Version): readonly string[] =>
  [designation, ...aliases, ...services.flatMap(({ number }) => number ?? [])].map(foldedDesignation)

/** A suffix that no list has, on a known type, by the suffix rules alone. */
export const unlistedVersion = (type: HandbookType, designation: string, of: string): Version =>
  versionOf(type, {
    ...{ designation, of, services: [CIVIL] },
    standing: readDesignation(designation).suffix.rugged === null ? 'other-number' : 'special-quality',
  })
