/** 100,000 tubes, each with a test, read from a file and taken into a new stock; and how long another waits meanwhile. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { performance } from 'node:perf_hooks'
import { guessedColumns } from '@/lib/exchange/tube-columns'
import type { Figure } from '@/lib/setup/bench'
import { migrate } from '@/lib/setup/migrate'
import { closeDatabase, databasePath, db, inTransaction } from '@/lib/store/database'
import { createShop } from '@/lib/store/shop'
import { chooseImport, chosenTable, startImport } from '@/lib/workflow/tables/import-tubes'
import { keeping } from '@/tests/support/keeper'
import { SHOP } from '@/tests/support/stocked-shop'

export const name = 'import'

const ROWS = 100_000

const HEADINGS = 'Mark;Type;Condition;Location;Price;Paid;Tester;Date;Plate volts;Screen volts;Grid volts;Ia;gm'

function file(): Uint8Array {
  const lines = [HEADINGS]
  for (let i = 0; i < ROWS; i++) {
    const milliamps = (40 + (i % 100) / 10).toFixed(1).replace('.', ',')
    const price = `${20 + (i % 30)},50`
    lines.push(
      `B-${i + 1};6V6GT;used;Drawer ${i % 40};${price};9,00;Tester 1;2031-04-${10 + (i % 20)};250;250;-12,5;${milliamps};4,1`,
    )
  }
  return new TextEncoder().encode(`${lines.join('\r\n')}\r\n`)
}

const PAUSE = 20

/** Longest that somebody who asks for a page of the stock every 20 ms waited for it, in ms. */
async function longestWait(isOver: () => boolean): Promise<number> {
  let longest = 0
  while (!isOver()) {
    const began = performance.now()
    await new Promise((resolve) => setTimeout(resolve, PAUSE))
    await db().tube.findMany({ take: 50, select: { id: true, mark: true } })
    longest = Math.max(longest, performance.now() - began - PAUSE)
  }
  return longest
}

export async function run(): Promise<readonly Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'benchglow-import-'))
  process.env.BENCHGLOW_DATA = folder
  try {
    await migrate(databasePath())
    await inTransaction((tx) => createShop(tx, SHOP))
    const step = keeping()
    const bytes = file()
    const began = performance.now()
    const chosen = await chooseImport(step, { fileName: 'stock.csv', bytes })
    if (!chosen.ok) throw new Error(`The file was refused: ${chosen.fault.code}`)
    const table = await chosenTable(chosen.value)
    const mapping = guessedColumns(table?.headings ?? [])
    const started = await startImport(step, { id: chosen.value, mapping, allOrNothing: true })
    if (!started.ok) throw new Error(`The import was refused: ${started.fault.code}`)
    let isOver = false
    const waited = longestWait(() => isOver)
    const done = await started.value.finished
    const seconds = (performance.now() - began) / 1000
    isOver = true
    const [tubes, tests] = [await db().tube.count(), await db().tubeTest.count()]
    return [
      { figure: 'rows taken in', value: tubes, unit: 'tubes', reference: ROWS, goal: ROWS, better: 'higher' },
      { figure: 'tests taken in', value: tests, unit: 'tests', reference: ROWS, goal: ROWS, better: 'higher' },
      { figure: 'rows refused', value: done.refused, unit: 'rows', reference: null, goal: 0, better: 'lower' },
      { figure: 'whole import', value: seconds, unit: 's', reference: null, goal: 15, better: 'lower' },
      {
        figure: 'longest look at the stock meanwhile',
        value: await waited,
        unit: 'ms',
        reference: null,
        goal: null,
        better: 'lower',
      },
    ]
  } finally {
    await closeDatabase()
    rmSync(folder, { recursive: true, force: true })
  }
}
