/**
 * What the print and the codes name: versions, types, services.
 *
 * A number whose stem is known but whose suffix is not listed (6SN7GTY) becomes a version of its own,
 * by the suffix rules. In the codes three figures are a source code, never a type.
 */
import { findTubeType } from '../../tube/find-tube-type'
import { knownTypes, type TubeCatalogue } from '../../tube/tube-catalogue'
import type { DesignationReading, Remark } from '../designation/designation-reading'
import { readDesignation } from '../designation/read-designation'
import type { KnowledgeSourceKey } from '../knowledge-source'
import type { OwnMaker, Seen } from '../seen'
import type { Service, Version } from '../version'
import { knownVersions, unlistedVersion } from '../versions'
import { readDateCode } from './date-code'
import { janRemark, sourceCodeRemark } from './maker-remarks'
import { isBare, listed, type Named, namedBy, ofStem } from './named'
import { unknownRemarks } from './unknown-remarks'

export type Printed = {
  readonly named: readonly Named[]
  /** All that can be: those known, and those only the print names. */
  readonly versions: readonly Version[]
  readonly services: ReadonlySet<Service>
  readonly remarks: readonly Remark[]
}

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

function remarksOf(readings: readonly DesignationReading[], codes: string, makers: readonly OwnMaker[]): Remark[] {
  return [
    ...readings.flatMap(({ remarks, janMaker }) => [...remarks, ...(janMaker ? [janRemark(janMaker, makers)] : [])]),
    ...piecesOf(codes)
      .filter((piece) => SOURCE_CODE.test(piece))
      .map((piece) => sourceCodeRemark(piece, makers)),
  ]
}

/** A word ("MADE ABROAD", "JAN" alone) names no tube; in the codes only a number that is known does. */
const isTelling = ({ reading, from, types }: Named): boolean =>
  types.size > 0 || (from === 'print' && reading.standard !== null)

const firstOf = (added: readonly Version[], { designation }: Version): number =>
  added.findIndex((one) => one.designation === designation)

type From = readonly [from: Named['from'], reading: DesignationReading, basis?: KnowledgeSourceKey]

function readingsOf({ print, codes, date }: Seen): readonly From[] {
  const type = print.trim() === '' ? [] : [readDesignation(print)]
  return [
    ...type.map((reading): From => ['print', reading]),
    ...codeReadings(codes).map((reading): From => ['codes', reading]),
    // An etched type code names its type as a print does.
    ...readDateCode(date).types.map(({ type, source }): From => ['date', readDesignation(type), source]),
  ]
}

export function readPrinted(seen: Seen, catalogue: TubeCatalogue, makers: readonly OwnMaker[]): Printed {
  const from = readingsOf(seen)
  const readings = from.map(([, reading]) => reading)
  const added = readings.flatMap((reading) => unlisted(reading, catalogue))
  const known = knownVersions(catalogue)
  const versions = added.length > 0 ? [...known, ...added.filter((one, at) => firstOf(added, one) === at)] : known
  const all = from.map(([where, reading, basis = 'handbook']) => namedBy({ reading, from: where, basis }, versions))
  const unknown = all.filter(({ types, reading }) => types.size === 0 && !(reading.jan && reading.standard === null))
  return {
    versions,
    named: all.filter(isTelling),
    services: new Set(all.flatMap(({ service }) => service ?? [])),
    remarks: [...remarksOf(readings, seen.codes, makers), ...unknown.flatMap((one) => unknownRemarks(one, catalogue))],
  }
}
