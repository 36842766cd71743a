/** A server that is killed (SIGKILL) while it takes a list in, and what the next one makes of it. */
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { inTransaction } from '@/lib/store/database'
import { findImport, type Import, moveImport, readImportFile, removeImportFile } from '@/lib/store/import'
import { findTubeByMark } from '@/lib/store/tube'
import { addTubeTest } from '@/lib/workflow/stock/add-tube-test'
import { endProgress, noteProgress } from '@/lib/workflow/tables/import-progress'
import { type CutShort, cutShort, cutShortText, listCutShort } from '@/lib/workflow/tables/import-standing'
import { cancelImport, chooseImport, continueImport } from '@/lib/workflow/tables/import-tubes'
import { undoImport } from '@/lib/workflow/tables/undo-import'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench } from '@/tests/support/person-at-work'
import { openStockedShop, testEntry, tubeInStock } from '@/tests/support/stocked-shop'

const database = freshDatabase()
await openStockedShop()

const ROWS = 12_000
/** As many as are written in one transaction. */
const TURN = 2000

const TESTED = 'Tester 1;2031-05-05;250;250;-14;72;6'

const countOf = (importId: string) => database.tube.count({ where: { importId } })

async function imported(id: string): Promise<Import> {
  return (await findImport(id)) ?? expect.fail(`Import ${id} is gone`)
}

async function cut(id: string): Promise<CutShort> {
  return (await cutShort(await imported(id))) ?? expect.fail('It is not cut short')
}

/** Every third row is without a mark, the last is bad. */
function list(letter: string, bad: string): Uint8Array {
  const row = (place: number) => `${place % 3 === 0 ? '' : `${letter}-${place}`};6L6GC;${TESTED}`
  const rows = Array.from({ length: ROWS - 1 }, (_, place) => row(place))
  return new TextEncoder().encode(`Mark;Type;Tester;Test date;Va;Vg2;Vg;Ia;gm\n${rows.join('\n')}\n${bad}\n`)
}

/** Gives the id. Killed as soon as rows are there, wherever it is then. */
async function killedMidway(letter: string, bad: string, mode: 'all' | 'good'): Promise<string> {
  const chosen = await chooseImport(atBench(), { fileName: `${letter}.csv`, bytes: list(letter, bad) })
  if (!chosen.ok) throw new Error(JSON.stringify(chosen.fault))
  const id = chosen.value
  const program = join(import.meta.dirname, '../../support/take-in-list.ts')
  const child = spawn(process.execPath, ['--conditions=react-server', '--import', 'tsx', program, id, mode], {
    stdio: ['ignore', 'inherit', 'inherit'],
  })
  const ended = once(child, 'exit')
  while ((await countOf(id)) === 0 && child.exitCode === null) await sleep(5)
  child.kill('SIGKILL')
  expect(await ended).toEqual([null, 'SIGKILL'])
  return id
}

async function wentOn(id: string): Promise<Import> {
  const begun = await continueImport(atBench('Odo'), id)
  if (!begun.ok) throw new Error(JSON.stringify(begun.fault))
  return begun.value.finished
}

const GOOD = `Z-1;6L6GC;${TESTED}`
const BAD = `Z-2;;${TESTED}`

describe('a server killed in the middle of a list', () => {
  it('all or nothing: says how much is in stock, and goes on to all of it, no row twice', async () => {
    const id = await killedMidway('A', GOOD, 'all')
    const found = await cut(id)
    expect(found).toMatchObject({ during: 'taking-in', canGoOn: true })
    expect(found.written % TURN).toBe(0)
    expect(found.written).toBeGreaterThan(0)
    expect(found.written).toBeLessThan(ROWS)
    expect(await countOf(id)).toBe(found.written)
    expect(await database.tubeTest.count({ where: { tube: { importId: id } } })).toBe(found.written)
    expect(cutShortText(found)).toBe(
      `A.csv: the server was stopped while it was being taken in; ${found.written} of its 12000 rows are in stock.`,
    )
    expect(await listCutShort()).toEqual([found])

    expect(await wentOn(id)).toMatchObject({ state: 'done', taken: ROWS, refused: 0 })
    expect(await countOf(id)).toBe(ROWS)
    const marks = (await database.tube.findMany({ where: { importId: id }, select: { mark: true } })).map(
      ({ mark }) => mark,
    )
    expect(new Set(marks).size).toBe(ROWS)
    expect(marks).toEqual(expect.arrayContaining(['A-1', 'A-11998', 'Z-1']))
    expect(await database.tubeTest.count({ where: { tube: { importId: id } } })).toBe(ROWS)
    expect([await cutShort(await imported(id)), await listCutShort()]).toEqual([null, []])
    expect(await continueImport(atBench(), id)).toMatchObject({ fault: { code: 'not-found' } })
  })

  it('all or nothing: when a mark was given away since, going on takes everything out again', async () => {
    const id = await killedMidway('B', `B-99999;6L6GC;${TESTED}`, 'all')
    await tubeInStock({ mark: 'B-99999' }, null)
    expect(await wentOn(id)).toMatchObject({ state: 'failed', taken: 0, refused: 1 })
    expect(await countOf(id)).toBe(0)
    expect(new TextDecoder().decode((await readImportFile(id, 'faults')) ?? undefined)).toContain('already stands on')
  })

  it('good rows only: undone after the kill, all is out but the tube that was tested since', async () => {
    const id = await killedMidway('C', BAD, 'good')
    const { written } = await cut(id)
    const tested = await findTubeByMark('C-1')
    await addTubeTest(atBench(), { tubeId: tested?.id ?? '', test: testEntry(), reject: false })
    expect(await undoImport(atBench(), id)).toEqual({ ok: true, value: { gone: written - 1, kept: 1, marks: ['C-1'] } })
    expect(await imported(id)).toMatchObject({ state: 'undone', taken: 1 })
    expect(await cutShort(await imported(id))).toBeNull()
  })

  it('good rows only: going on keeps what is there and brings the bad row back with its fault', async () => {
    const id = await killedMidway('D', `D-1;;${TESTED}`, 'good')
    const corrected = await findTubeByMark('D-2')
    await database.tube.update({ where: { id: corrected?.id ?? '' }, data: { mark: 'D-22222' } })
    await tubeInStock({ mark: 'D-2' }, null)
    expect(await wentOn(id)).toMatchObject({ state: 'done', taken: ROWS - 1, refused: 1 })
    expect(new TextDecoder().decode((await readImportFile(id, 'faults')) ?? undefined)).toContain('Type is empty.')
    expect(await findTubeByMark('D-22222')).not.toBeNull()
  })
})

describe('one that was cut short', () => {
  /** As a kill leaves it, without the waiting. */
  async function leftRunning(fileName: string, order?: { mapping: string[]; allOrNothing: boolean }): Promise<string> {
    const bytes = new TextEncoder().encode('Mark;Type\nE-1;EL34\n')
    const chosen = await chooseImport(atBench(), { fileName, bytes })
    if (!chosen.ok) throw new Error(JSON.stringify(chosen.fault))
    await inTransaction((tx) => moveImport(tx, chosen.value, ['chosen'], { state: 'running', ...(order && { order }) }))
    return chosen.value
  }
  const order = { mapping: ['mark', 'designation'], allOrNothing: true }

  it('while it is under way, it is neither cut short nor to be begun or undone a second time', async () => {
    const id = await leftRunning('under-way.csv', order)
    noteProgress(id, { phase: 'writing', done: 0, total: 1 })
    expect(await cutShort(await imported(id))).toBeNull()
    const fault = { code: 'import-under-way', fileName: 'under-way.csv' }
    expect(await continueImport(atBench(), id)).toEqual({ ok: false, fault })
    expect(await undoImport(atBench(), id)).toEqual({ ok: false, fault })
    endProgress(id)
    expect(await undoImport(atBench(), id)).toMatchObject({ value: { gone: 0, kept: 0 } })
  })

  it('two who go on at once: one of them is told it is under way', async () => {
    const id = await leftRunning('two.csv', order)
    const answers = await Promise.all([continueImport(atBench(), id), continueImport(atBench('Odo'), id)])
    expect(answers.map(({ ok }) => ok).sort()).toEqual([false, true])
    for (const answer of answers) if (answer.ok) expect(await answer.value.finished).toMatchObject({ taken: 1 })
    await undoImport(atBench(), id)
  })

  it('cancelled while it goes on, leaves nothing', async () => {
    const id = await killedMidway('F', GOOD.replace('Z-1', 'F-last'), 'good')
    const begun = await continueImport(atBench(), id)
    if (!begun.ok) throw new Error(JSON.stringify(begun.fault))
    cancelImport(id)
    expect(await begun.value.finished).toMatchObject({ state: 'cancelled', taken: 0 })
    expect(await countOf(id)).toBe(0)
  })

  it('without its file it cannot go on, and says so; it can be undone', async () => {
    const id = await leftRunning('gone.csv', order)
    await removeImportFile(id, 'table')
    expect(await continueImport(atBench(), id)).toMatchObject({ fault: { what: 'The file of this import' } })
    expect((await undoImport(atBench(), id)).ok).toBe(true)
  })

  it('begun by an earlier edition that kept no order: undoing is the way out', async () => {
    const id = await leftRunning('old.csv')
    expect(await cut(id)).toMatchObject({ canGoOn: false })
    expect((await undoImport(atBench(), id)).ok).toBe(true)
  })

  it('in the middle of its undoing: says so, and undoing can be asked for again', async () => {
    const id = await leftRunning('half-undone.csv', order)
    await inTransaction((tx) => moveImport(tx, id, ['running'], { state: 'undoing' }))
    const found = await cut(id)
    expect(found).toMatchObject({ during: 'undoing', canGoOn: false })
    expect(cutShortText(found)).toContain('while it was being undone; none of its 1 rows is in stock')
    expect((await undoImport(atBench(), id)).ok).toBe(true)
    expect(await imported(id)).toMatchObject({ state: 'undone' })
  })
})
