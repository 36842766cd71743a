/**
 * What reading the print would settle: as if the bottle bore the number of one of the versions known here,
 * or one that is not known.
 */
import { readDesignation } from '../designation/read-designation'
import { isBare, type Named } from '../marks/named'
import type { Version } from '../version'
import { printFit, printPenalty, type Spread, spreadOf } from '../weigh/print-weights'
import { looked, type NextLook, type Split } from './look'
import { leadingVersion, type VersionGroups } from './version-groups'

const QUESTION =
  'Is there a number on it? Breathe on the glass and hold it against a slanting light; look at the base too.'

function namedAlone(version: Version | null): Named | null {
  if (!version) return null
  const reading = readDesignation(version.designation)
  const bareStem = isBare(reading) ? reading.stem : null
  const [versions, types] = [new Set([version.designation]), new Set([version.typeId])]
  return { ...{ reading, versions, types, bareStem }, from: 'print', basis: 'handbook', service: null }
}

function likelihood(print: Named | null, version: Version | null, spread: Spread): number {
  const fit = print ? printFit(print, version) : version ? 'number-not-known' : 'nothing-known'
  return Math.exp(-printPenalty(fit, version, spread))
}

export function printLook(groups: VersionGroups): NextLook {
  const spread = spreadOf(groups.versions.filter((one) => one !== null))
  const prints = groups.versions.map(namedAlone)
  const table = prints.map((print) => groups.versions.map((one) => likelihood(print, one, spread)))
  const totals = groups.versions.map((_, at) => table.reduce((sum, row) => sum + (row[at] ?? 0), 0))
  const splits = groups.versions.map((version, row): Split => {
    const choice = version?.designation ?? 'none'
    const parts = groups.shares.map((share, at) => (share * (table[row]?.[at] ?? 0)) / (totals[at] ?? 1))
    return { choice, word: version ? choice : 'a number not known here', parts }
  })
  const leader = (parts: readonly number[]) => leadingVersion(groups, parts)
  const question = { key: 'print', settles: 'version', label: 'Print', question: QUESTION } as const
  return looked({ ...question, splits, leader, now: groups.shares })
}
