/** Tubes with the test that speaks for them, under the headings that reading them back knows by itself. */
import { dayInZone } from '../domain/calendar'
import { exactDecimal, type Money } from '../domain/money'
import {
  conditionWord,
  type SectionReading,
  type StockedTube,
  type TubeTest,
  whereaboutsWord,
} from '../domain/stock/tube'
import { SEEN_NAMES, warrantyWord } from '../domain/stock/tube-further'
import { TUBE_COLUMNS, type TubeColumn } from './tube-columns'
import type { Cell, CellKind, TableColumn } from './write-table'

export type TableSetting = { readonly digits: number; readonly timeZone: string }

/** Without the tail of a binary fraction: 0.0721 A is 72.1 mA. */
export const milli = (value: number | null | undefined): Cell =>
  value === null || value === undefined ? null : Number((value * 1000).toPrecision(9))

export const amountCell = (amount: Money | null, digits: number): Cell =>
  amount === null ? null : exactDecimal(amount, digits)

type OfTube = (stocked: StockedTube) => Cell

const sectionOf = (test: TubeTest | null, number: 1 | 2): SectionReading | undefined =>
  test?.sections.find(({ section }) => section === number)

function cells({ digits, timeZone }: TableSetting): readonly (readonly [TubeColumn, CellKind, OfTube])[] {
  const day = (test: TubeTest | null): Cell => test && dayInZone(test.testedAt, timeZone)
  return [
    ['mark', 'plain', ({ tube }) => tube.mark],
    ['designation', 'text', ({ tube }) => tube.designation],
    ['condition', 'text', ({ tube }) => conditionWord(tube.condition)],
    ['whereabouts', 'text', ({ tube }) => whereaboutsWord(tube.whereabouts)],
    ['location', 'text', ({ tube }) => tube.location],
    ['price', 'plain', ({ tube }) => amountCell(tube.price, digits)],
    ['cost', 'plain', ({ tube }) => amountCell(tube.cost, digits)],
    ['acquired', 'text', ({ tube }) => tube.acquired],
    ['construction', 'text', ({ tube }) => tube.construction],
    ['used', 'text', ({ tube }) => tube.further.used],
    ['cosmetics', 'text', ({ tube }) => tube.further.cosmetics],
    ['box', 'text', ({ tube }) => tube.further.box],
    ...SEEN_NAMES.map((name) => [name, 'text', ({ tube }: StockedTube) => tube.further[name]] as const),
    ['warranty', 'text', ({ tube }) => warrantyWord(tube.further.warranty)],
    ['warrantyUntil', 'plain', ({ tube }) => tube.further.warrantyUntil],
    ['hoursBefore', 'plain', ({ tube }) => tube.further.hoursBefore],
    ['setName', 'text', ({ tube }) => tube.further.setName],
    ['reference', 'text', ({ tube }) => (tube.further.reference ? 'yes' : '')],
    ['day', 'plain', ({ test }) => day(test)],
    ['testedBy', 'text', ({ test }) => test?.testedBy ?? null],
    ['instrumentName', 'text', ({ test }) => test?.instrumentName ?? null],
    ['calibratedOn', 'plain', ({ test }) => test?.calibratedOn ?? null],
    ['plateVolts', 'plain', ({ test }) => test?.plateVoltage ?? null],
    ['screenVolts', 'plain', ({ test }) => test?.screenVoltage ?? null],
    ['gridVolts', 'plain', ({ test }) => test?.gridVoltage ?? null],
    ['plateMilliamps', 'plain', ({ test }) => milli(sectionOf(test, 1)?.plateCurrent)],
    ['gm', 'plain', ({ test }) => milli(sectionOf(test, 1)?.transconductance)],
    ['screenMilliamps', 'plain', ({ test }) => milli(sectionOf(test, 1)?.screenCurrent)],
    ['secondPlateMilliamps', 'plain', ({ test }) => milli(sectionOf(test, 2)?.plateCurrent)],
    ['secondGm', 'plain', ({ test }) => milli(sectionOf(test, 2)?.transconductance)],
    ['shorts', 'text', ({ test }) => (test ? (test.shorts ? 'found' : 'none') : null)],
    ['leakage', 'text', ({ test }) => test?.leakage ?? null],
    ['gas', 'text', ({ test }) => test?.gas ?? null],
    ['noise', 'text', ({ test }) => test?.noise ?? null],
    ['microphony', 'text', ({ test }) => test?.microphony ?? null],
    ['testNote', 'text', ({ test }) => test?.note ?? null],
  ]
}

export const tubeTable = (setting: TableSetting): TableColumn<StockedTube>[] =>
  cells(setting).map(([name, kind, cell]) => ({ heading: TUBE_COLUMNS[name].heading, kind, cell }))

/** The latest test of a tube as it stands in the table: a short that came last is what it says. */
export function tableRow(tube: StockedTube['tube'], tests: readonly TubeTest[]): StockedTube {
  return { tube, test: tests[0] ?? null, shortsFoundAt: null }
}

export type TestRow = { readonly mark: string; readonly designation: string; readonly test: TubeTest }

/** Every test there is, a line for each. */
export function testTable({ timeZone }: TableSetting): TableColumn<TestRow>[] {
  const text = (heading: string, cell: (row: TestRow) => Cell): TableColumn<TestRow> => ({
    heading,
    kind: 'text',
    cell,
  })
  const plain = (heading: string, cell: (row: TestRow) => Cell): TableColumn<TestRow> => ({
    heading,
    kind: 'plain',
    cell,
  })
  const head = (name: TubeColumn) => TUBE_COLUMNS[name].heading
  return [
    plain(head('mark'), ({ mark }) => mark),
    text(head('designation'), ({ designation }) => designation),
    plain(head('day'), ({ test }) => dayInZone(test.testedAt, timeZone)),
    text(head('testedBy'), ({ test }) => test.testedBy),
    text(head('instrumentName'), ({ test }) => test.instrumentName),
    plain(head('calibratedOn'), ({ test }) => test.calibratedOn),
    plain(head('plateVolts'), ({ test }) => test.plateVoltage),
    plain(head('screenVolts'), ({ test }) => test.screenVoltage),
    plain(head('gridVolts'), ({ test }) => test.gridVoltage),
    plain(head('plateMilliamps'), ({ test }) => milli(sectionOf(test, 1)?.plateCurrent)),
    plain(head('gm'), ({ test }) => milli(sectionOf(test, 1)?.transconductance)),
    plain(head('screenMilliamps'), ({ test }) => milli(sectionOf(test, 1)?.screenCurrent)),
    plain(head('secondPlateMilliamps'), ({ test }) => milli(sectionOf(test, 2)?.plateCurrent)),
    plain(head('secondGm'), ({ test }) => milli(sectionOf(test, 2)?.transconductance)),
    text(head('shorts'), ({ test }) => (test.shorts ? 'found' : 'none')),
    text(head('leakage'), ({ test }) => test.leakage),
    text(head('gas'), ({ test }) => test.gas),
    text(head('noise'), ({ test }) => test.noise),
    text(head('microphony'), ({ test }) => test.microphony),
    text(head('testNote'), ({ test }) => test.note),
  ]
}
