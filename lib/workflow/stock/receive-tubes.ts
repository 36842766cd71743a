/**
 * Takes a delivery of one type into stock: what they share once, then a row for
 * each. All of it is saved or none, and every row at fault is told at once.
 */
import { dayInZone } from '@/lib/domain/calendar'
import type { Result } from '@/lib/domain/result'
import { type StockType, stockType } from '@/lib/domain/stock/stock-type'
import { isTestGiven, type TestEntry, testFaults } from '@/lib/domain/stock/test-entry'
import type { SectionReading, TubeDetails } from '@/lib/domain/stock/tube'
import type { TubeFault } from '@/lib/domain/stock/tube-fault'
import type { TubeFurther } from '@/lib/domain/stock/tube-further'
import { inTransaction, type Tx } from '@/lib/store/database'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { shopOf } from './add-tube-test'
import { addTube, freeMark, nextMark } from './keep-tube'

export type DeliveryRow = {
  /** Empty: the next free mark is given. */
  readonly mark: string
  readonly sections: readonly SectionReading[]
  readonly shorts: boolean
}

export type Delivery = {
  readonly details: Omit<TubeDetails, 'mark'>
  /** The same for all. Left out: nothing further is known. */
  readonly further?: TubeFurther
  /** Day, instrument and test point of every row that was tested. */
  readonly setting: Omit<TestEntry, 'sections' | 'shorts'>
  readonly rows: readonly DeliveryRow[]
  /** Untested ones without a row; marks are given. */
  readonly untested: number
}

/** Fields of a fault that stand once for all rows. */
const SHARED: ReadonlySet<string> = new Set(['day', 'instrumentName', 'plateVolts', 'screenVolts', 'gridVolts'])
const UNTESTED_ROW: DeliveryRow = { mark: '', sections: [], shorts: false }

export type ReceivedTube = { readonly id: string; readonly mark: string }

/** In the order of the rows. */
export function receiveTubes(step: Step, delivery: Delivery): Promise<Result<readonly ReceivedTube[], StepFault>> {
  const rows = [...delivery.rows, ...Array<DeliveryRow>(delivery.untested).fill(UNTESTED_ROW)]
  return refusing(() =>
    inTransaction(async (tx) => {
      const shop = await shopOf(tx)
      const tests = rows.map((row) => testOf(row, delivery))
      const marked = await readMarks(tx, rows)
      const today = dayInZone(step.now, shop.timeZone)
      const faults = [...marked.faults, ...faultsOfTests(tests, stockType(delivery.details.designation, shop), today)]
      if (faults.length > 0) return refuse({ code: 'tubes-refused', faults })
      const { further } = delivery
      const received: ReceivedTube[] = []
      for (const [place, test] of tests.entries()) {
        const mark = marked.marks[place] || (await nextMark(tx, new Set(marked.marks)))
        received.push({ id: await addTube(tx, step, shop, { ...delivery.details, mark }, test, further), mark })
      }
      return received
    }),
  )
}

/** Null for a row in which nothing was read: what stands once for all rows makes no test. */
function testOf({ sections, shorts }: DeliveryRow, { setting }: Delivery): TestEntry | null {
  const empty = {
    plateVoltage: null,
    screenVoltage: null,
    gridVoltage: null,
    leakage: '',
    gas: '',
    noise: '',
    microphony: '',
    note: '',
  }
  const entry = { ...setting, sections, shorts }
  return isTestGiven({ ...entry, ...empty }) ? entry : null
}

type Marks = { readonly marks: readonly string[]; readonly faults: readonly TubeFault[] }

async function readMarks(tx: Tx, rows: readonly DeliveryRow[]): Promise<Marks> {
  const marks: string[] = []
  const faults: TubeFault[] = []
  for (const [row, { mark: typed }] of rows.entries()) {
    const read = typed === '' ? null : await freeMark(tx, typed, null)
    if (read && !read.ok) faults.push({ ...read.fault, row })
    const mark = read?.ok ? read.value : ''
    const firstRow = mark === '' ? -1 : marks.indexOf(mark)
    if (firstRow >= 0) faults.push({ code: 'mark-twice', field: 'mark', mark, firstRow, row })
    marks.push(mark)
  }
  return { marks, faults }
}

function faultsOfTests(
  tests: readonly (TestEntry | null)[],
  type: StockType,
  today: Parameters<typeof testFaults>[2],
): TubeFault[] {
  const faults = tests.flatMap((test, row): TubeFault[] =>
    test ? testFaults(test, type, today).map((fault) => ({ ...fault, row: SHARED.has(fault.field) ? null : row })) : [],
  )
  // What is wrong with the shared fields is wrong for every row, and told once.
  const firstOf = (field: string) => faults.find((fault) => fault.row === null && fault.field === field)
  return faults.filter((fault) => fault.row !== null || firstOf(fault.field) === fault)
}
