/**
 * The tubes of one family in stock with no more of each than says whether it may stand in a
 * socket by itself and how alike its sections are. A stock is long and this is read at every
 * look: one statement that gives a row for a test, and of the tests of a tube those from the
 * latest one that is surely usable on.
 */
import { money } from '@/lib/domain/money'
import type { JudgedTube } from '@/lib/domain/stock/candidate-of'
import { spokenFor } from '@/lib/domain/stock/latest-test'
import type { TubeCondition, TubeHold } from '@/lib/domain/stock/tube'
import { amps, siemens, volts } from '@/lib/domain/units'
import { db } from './database'
import { known } from './tube-rows'

type BriefTest = NonNullable<JudgedTube['test']>

/** Held ones included; for which job is told by its id alone. In no order, and those without any test left out. */
export async function listBriefStock(family: string): Promise<JudgedTube[]> {
  const rows = await rowsOf(family)
  const all: JudgedTube[] = []
  for (let from = 0; from < rows.length; ) {
    const row = rows[from] as Row
    let end = from + 1
    while (rows[end]?.id === row.id) end += 1
    all.push({ tube: tubeOf(row), ...spokenFor(rows.slice(from, end).map(testOf)) })
    from = end
  }
  return all
}

/** A test that has but a second section is told by that one. */
type Row = {
  readonly id: string
  readonly mark: string
  readonly designation: string
  readonly condition: string
  readonly price: number
  readonly hold: string
  readonly heldForJob: string | null
  readonly heldUntil: Date | null
  readonly reference: boolean
  readonly testedAt: Date
  readonly instrumentName: string
  readonly plateVolts: number | null
  readonly screenVolts: number | null
  readonly gridVolts: number | null
  readonly shorts: boolean
  readonly leakage: string
  readonly gas: string
  readonly noise: string
  readonly microphony: string | null
  readonly plateAmps: number | null
  readonly gmSiemens: number | null
  readonly hasOther: boolean | number | bigint
  readonly otherAmps: number | null
  readonly otherSiemens: number | null
}

/** Tests of one tube follow each other, newest first. */
const rowsOf = (family: string): Promise<readonly Row[]> => db().$queryRaw<Row[]>`
  SELECT t."id", t."mark", t."designation", t."condition", t."price", t."hold", t."heldForJob", t."heldUntil",
    t."reference", a."testedAt", a."instrumentName", a."plateVolts", a."screenVolts", a."gridVolts", a."shorts",
    a."leakage", a."gas", a."noise", a."microphony", a."plateAmps", a."gmSiemens",
    b."id" IS NOT NULL AS "hasOther", b."plateAmps" AS "otherAmps", b."gmSiemens" AS "otherSiemens"
  FROM "Tube" t
  JOIN "TubeTest" a ON a."tubeId" = t."id"
  LEFT JOIN "TubeTest" b
    ON a."section" = 1 AND b."section" = 2 AND b."tubeId" = a."tubeId" AND b."testedAt" = a."testedAt"
  WHERE t."family" = ${family} AND t."whereabouts" = 'in-stock'
    AND (a."section" = 1 OR NOT EXISTS (
      SELECT 1 FROM "TubeTest" o
      WHERE o."tubeId" = a."tubeId" AND o."testedAt" = a."testedAt" AND o."section" = 1))
    AND a."testedAt" >= COALESCE((
      SELECT MAX(u."testedAt") FROM "TubeTest" u
      WHERE u."tubeId" = a."tubeId" AND u."section" = 1 AND NOT u."shorts"
        AND u."plateVolts" IS NOT NULL AND u."plateAmps" IS NOT NULL), a."testedAt")
  ORDER BY t."id", a."testedAt" DESC`

const tubeOf = (row: Row): JudgedTube['tube'] => ({
  id: row.id,
  mark: row.mark,
  designation: row.designation,
  condition: row.condition as TubeCondition,
  price: money(row.price),
  whereabouts: 'in-stock',
  hold: row.hold as TubeHold,
  heldForJob: row.heldForJob,
  heldForJobNumber: null,
  heldUntil: row.heldUntil,
  further: { reference: row.reference },
})

function testOf(row: Row): BriefTest {
  const one = { plateCurrent: known(row.plateAmps, amps), transconductance: known(row.gmSiemens, siemens) }
  const other = { plateCurrent: known(row.otherAmps, amps), transconductance: known(row.otherSiemens, siemens) }
  return {
    testedAt: row.testedAt,
    instrumentName: row.instrumentName,
    shorts: row.shorts,
    leakage: row.leakage,
    gas: row.gas,
    noise: row.noise,
    microphony: row.microphony,
    plateVoltage: known(row.plateVolts, volts),
    screenVoltage: known(row.screenVolts, volts),
    gridVoltage: known(row.gridVolts, volts),
    sections: row.hasOther ? [one, other] : [one],
  }
}
