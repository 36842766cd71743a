/**
 * What the print and the codes name: versions, types, services.
 *
 * A number whose stem is known but whose suffix is not listed (6SN7GTY) becomes a version of its own,
 * by the suffix rules. In the codes three figures are a source code, never a type.
 */
import { findTubeType } from '../../tube/find-tube-type'
import { foldedDesignation } from '../../tube/folded-designation'
import { knownTypes, type TubeCatalogue } from '../../tube/tube-catalogue'
import type { DesignationReading, Remark } from '../designation/designation-reading'
import { readDesignation } from '../designation/read-designation'
import type { OwnMaker, Seen } from '../seen'
import type { Service, Version } from '../version'
import { knownVersions, unlistedVersion, writingsOf } from '../versions'
import { changeCode } from './date-code'

export type Named = {
  readonly reading: DesignationReading
  readonly from: 'print' | 'codes' | 'date'
  /** Designations of the versions it names. */
  readonly versions: ReadonlySet<string>
  readonly types: ReadonlySet<string>
  /** A number without any suffix: 6V6. Names its stem's glass versions too, in careless modern writing. */
  readonly bareStem: string | null
  readonly service: Service | null
}

export type Printed = {
  readonly named: readonly Named[]
  /** All that can be: those known, and those only the print names. */
  readonly versions: readonly Version[]
  readonly services: ReadonlySet<Service>
  readonly remarks: readonly Remark[]
}

const SERVICES: Readonly<Partial<Record<DesignationReading['scheme'], Service>>> = {
  'common-valve': 'common-valve',
  'special-quality-m': 'common-valve',
  'service-vt': 'signal-corps',
  'british-service': 'british-service',
}

const numbersOf = (reading: DesignationReading): readonly DesignationReading[] => [reading, ...reading.alsoNamed]

/** The whole with a maker's letters first (ECC803S is a number of its own), then what the scheme knows. */
function listed(reading: DesignationReading, versions: readonly Version[]): Version[] {
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

function ofStem(reading: DesignationReading, versions: readonly Version[]): Version[] {
  return reading.stem === null ? [] : versions.filter(({ stem }) => stem === reading.stem)
}

export const isBare = ({ scheme, standard, stem }: DesignationReading): boolean =>
  scheme === 'us-receiving' && standard === stem

/** Only where the stem leads to one type. */
function unlisted(reading: DesignationReading, catalogue: TubeCatalogue): Version[] {
  const { scheme, standard } = reading
  const versions = knownVersions(catalogue)
  if (standard === null || isBare(reading) || !scheme.startsWith('us-') || listed(reading, versions).length > 0)
    return []
  const typeIds = new Set(ofStem(reading, versions).map(({ typeId }) => typeId))
  const [typeId] = typeIds.size === 1 ? typeIds : []
  const type = knownTypes(catalogue).find(({ id }) => id === typeId)
  const plain = findTubeType(standard, catalogue)?.designation ?? type?.id
  return type && plain ? [unlistedVersion(type, standard, plain)] : []
}

function namedBy(reading: DesignationReading, from: Named['from'], versions: readonly Version[]): Named {
  const exact = numbersOf(reading).flatMap((one) => listed(one, versions))
  const stems = exact.length > 0 ? [] : numbersOf(reading).flatMap((one) => ofStem(one, versions))
  const bare = numbersOf(reading).find(isBare)
  return {
    ...{ reading, from },
    versions: new Set(exact.map(({ designation }) => designation)),
    types: new Set([...exact, ...stems].map(({ typeId }) => typeId)),
    bareStem: bare?.stem ?? null,
    service: reading.jan ? 'jan' : (SERVICES[reading.scheme] ?? null),
  }
}

const SOURCE_CODE = /^\d{3}$/

const piecesOf = (codes: string): readonly string[] =>
  codes
    .split(/[,;\n]+/)
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '')

function codeReadings(codes: string): DesignationReading[] {
  return piecesOf(codes)
    .filter((piece) => !SOURCE_CODE.test(piece))
    .map(readDesignation)
}

function makerRemark(what: string, named: OwnMaker | undefined): Remark {
  return named
    ? { sentence: `${what}: ${named.name}.`, source: 'shop' }
    : { sentence: `${what}: whose it is, the shop’s own list does not say.`, source: 'shop' }
}

export const sourceCodeRemark = (code: string, makers: readonly OwnMaker[]): Remark =>
  makerRemark(
    `US source code ${code}`,
    makers.find(({ sourceCodes }) => sourceCodes.includes(code)),
  )

export const factoryMarkRemark = (mark: string, makers: readonly OwnMaker[]): Remark =>
  makerRemark(
    `Factory mark ${mark}`,
    makers.find(({ factoryMarks }) => factoryMarks.includes(mark)),
  )

const janRemark = (letters: string, makers: readonly OwnMaker[]): Remark =>
  makerRemark(
    `Maker letters ${letters} after JAN`,
    makers.find(({ janLetters }) => janLetters.includes(letters)),
  )

function remarksOf(readings: readonly DesignationReading[], codes: string, makers: readonly OwnMaker[]): Remark[] {
  return [
    ...readings.flatMap(({ remarks, janMaker }) => [...remarks, ...(janMaker ? [janRemark(janMaker, makers)] : [])]),
    ...piecesOf(codes)
      .filter((piece) => SOURCE_CODE.test(piece))
      .map((piece) => sourceCodeRemark(piece, makers)),
  ]
}

/** An etched type and change code names its type as a print does. */
function etchedType(date: string): DesignationReading[] {
  const code = date
    .split(/[\s,;]+/)
    .map(changeCode)
    .find((one) => one !== null)
  return code ? [readDesignation(code.type)] : []
}

const unreadRemark = ({ reading }: Named): Remark => ({
  sentence: `“${reading.asked}” is no number known here: kept as text, it weighs nothing.`,
  source: 'practice',
})

/** A number that the handbook lists as merely similar: told, never taken for the type. */
function similarRemarks({ reading }: Named, catalogue: TubeCatalogue): Remark[] {
  const asked = foldedDesignation(reading.standard ?? reading.asked)
  const types = knownTypes(catalogue).filter(({ similar }) =>
    similar.some(({ number }) => foldedDesignation(number) === asked),
  )
  if (asked === '' || types.length === 0) return []
  const names = types.map(({ id }) => id).join(' and ')
  const sentence = `${reading.asked} is listed as similar to ${names}, not as the same: check base, heater and ratings.`
  return [{ sentence, source: 'handbook' }]
}

/** A word ("MADE ABROAD", "JAN" alone) names no tube; in the codes only a number that is known does. */
const isTelling = ({ reading, from, types }: Named): boolean =>
  types.size > 0 || (from === 'print' && reading.standard !== null)

const firstOf = (added: readonly Version[], { designation }: Version): number =>
  added.findIndex((one) => one.designation === designation)

type From = readonly [from: Named['from'], reading: DesignationReading]

function readingsOf({ print, codes, date }: Seen): readonly From[] {
  const type = print.trim() === '' ? [] : [readDesignation(print)]
  return [
    ...type.map((reading): From => ['print', reading]),
    ...codeReadings(codes).map((reading): From => ['codes', reading]),
    ...etchedType(date).map((reading): From => ['date', reading]),
  ]
}

export function readPrinted(seen: Seen, catalogue: TubeCatalogue, makers: readonly OwnMaker[]): Printed {
  const from = readingsOf(seen)
  const readings = from.map(([, reading]) => reading)
  const added = readings.flatMap((reading) => unlisted(reading, catalogue))
  const known = knownVersions(catalogue)
  const versions = added.length > 0 ? [...known, ...added.filter((one, at) => firstOf(added, one) === at)] : known
  const all = from.map(([where, reading]) => namedBy(reading, where, versions))
  const unread = all.filter((one) => !isTelling(one) && !one.reading.jan)
  return {
    versions,
    named: all.filter(isTelling),
    services: new Set(all.flatMap(({ service }) => service ?? [])),
    remarks: [
      ...remarksOf(readings, seen.codes, makers),
      ...all.filter(({ types }) => types.size === 0).flatMap((one) => similarRemarks(one, catalogue)),
      ...unread.map(unreadRemark),
    ],
  }
}
