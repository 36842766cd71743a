/** Sittings at the tube tester. Their lines are test records that name the sheet. */
import type { Prisma } from '@/generated/sqlite/client'
import type { Day } from '@/lib/domain/calendar'
import { money } from '@/lib/domain/money'
import type { SheetLine, TestSheet, TestSheetDetails } from '@/lib/domain/stock/sheet/test-sheet'
import type { TubeCondition } from '@/lib/domain/stock/tube'
import { volts } from '@/lib/domain/units'
import { db, type Tx } from './database'
import { testColumns, testsByTube } from './tube-rows'

const columns = {
  id: true,
  designation: true,
  instrumentName: true,
  day: true,
  plateVolts: true,
  screenVolts: true,
  gridVolts: true,
  sections: true,
  condition: true,
  location: true,
  price: true,
  cost: true,
  startedAt: true,
  startedBy: true,
} satisfies Prisma.TestSheetSelect

type Row = Prisma.TestSheetGetPayload<{ select: typeof columns }>

const volt = (value: number | null) => (value === null ? null : volts(value))

const sheetOf = ({ plateVolts, screenVolts, gridVolts, ...row }: Row): TestSheet => ({
  ...row,
  day: row.day as Day,
  condition: row.condition as TubeCondition,
  sections: row.sections === 2 ? 2 : 1,
  price: money(row.price),
  cost: row.cost === null ? null : money(row.cost),
  plateVoltage: volt(plateVolts),
  screenVoltage: volt(screenVolts),
  gridVoltage: volt(gridVolts),
})

export async function createTestSheet(
  tx: Tx,
  details: TestSheetDetails & Pick<TestSheet, 'startedAt' | 'startedBy'>,
): Promise<string> {
  const { plateVoltage, screenVoltage, gridVoltage, ...rest } = details
  const data = { ...rest, plateVolts: plateVoltage, screenVolts: screenVoltage, gridVolts: gridVoltage }
  return (await tx.testSheet.create({ data, select: { id: true } })).id
}

export async function findTestSheet(id: string, tx: Tx = db()): Promise<TestSheet | null> {
  const row = await tx.testSheet.findUnique({ where: { id }, select: columns })
  return row && sheetOf(row)
}

export type SheetHead = TestSheet & { readonly lines: number }

/** Newest first. */
export async function listTestSheets(limit = 20): Promise<SheetHead[]> {
  const rows = await db().testSheet.findMany({ orderBy: { startedAt: 'desc' }, take: limit, select: columns })
  const counts = await db().tubeTest.groupBy({
    by: ['sheetId'],
    where: { sheetId: { in: rows.map(({ id }) => id) }, section: 1 },
    _count: { _all: true },
  })
  const lines = new Map(counts.map(({ sheetId, _count }) => [sheetId, _count._all]))
  return rows.map((row) => ({ ...sheetOf(row), lines: lines.get(row.id) ?? 0 }))
}

/** In the order of writing. */
export async function listSheetLines(sheetId: string, tx: Tx = db()): Promise<SheetLine[]> {
  const rows = await tx.tubeTest.findMany({
    where: { sheetId },
    orderBy: [{ testedAt: 'asc' }, { section: 'asc' }],
    select: { ...testColumns, tube: { select: { mark: true } } },
  })
  const marks = new Map(rows.map(({ tubeId, tube }) => [tubeId, tube.mark]))
  const lines = [...testsByTube(rows)].flatMap(([tubeId, tests]) =>
    tests.map((test) => ({ tubeId, mark: marks.get(tubeId) ?? '', test })),
  )
  return lines.sort((a, b) => a.test.testedAt.getTime() - b.test.testedAt.getTime())
}

/** A line that was wrong goes, so that the right one can be written in its place. */
export async function removeSheetLine(tx: Tx, sheetId: string, { tubeId, test }: SheetLine): Promise<void> {
  await tx.tubeTest.deleteMany({ where: { sheetId, tubeId, testedAt: test.testedAt } })
}
