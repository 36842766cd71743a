import { describe, expect, it } from 'vitest'
import type { Day } from '@/lib/domain/calendar'
import { money } from '@/lib/domain/money'
import { NOTHING_FURTHER } from '@/lib/domain/stock/tube-further'
import { volts } from '@/lib/domain/units'
import { guessedColumns } from '@/lib/exchange/tube-columns'
import { inTransaction } from '@/lib/store/database'
import { allTubes, type TubeWithTests } from '@/lib/store/export-rows'
import { findImport, findMapping, readImportFile } from '@/lib/store/import'
import { findShop } from '@/lib/store/shop'
import { findTubeByMark, saveWhereabouts } from '@/lib/store/tube'
import { addTubeTest } from '@/lib/workflow/stock/add-tube-test'
import { keepTube } from '@/lib/workflow/stock/keep-tube'
import { exportTable } from '@/lib/workflow/tables/export-table'
import { cancelImport, chooseImport, chosenTable, startImport } from '@/lib/workflow/tables/import-tubes'
import { undoImport } from '@/lib/workflow/tables/undo-import'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, NOW } from '@/tests/support/person-at-work'
import { openStockedShop, section, testEntry, tubeDetails, tubeInStock } from '@/tests/support/stocked-shop'

const database = freshDatabase()
await openStockedShop()

const bytes = (text: string) => new TextEncoder().encode(text)

async function chosen(text: string): Promise<string> {
  const answer = await chooseImport(atBench(), { fileName: 'a list.csv', bytes: bytes(text) })
  if (!answer.ok) throw new Error(JSON.stringify(answer.fault))
  return answer.value
}

async function takeIn(text: string, allOrNothing = true) {
  const id = await chosen(text)
  const mapping = guessedColumns((await chosenTable(id))?.headings ?? [])
  const started = await startImport(atBench(), { id, mapping, allOrNothing })
  if (!started.ok) throw new Error(JSON.stringify(started.fault))
  return { id, finished: started.value.finished }
}

const textOf = async (id: string) => new TextDecoder().decode((await readImportFile(id, 'faults')) ?? undefined)
const HEAD = 'Mark;Type;Price;Tester;Test date;Va;Vg2;Vg;Ia;gm'

describe('a list of tubes', () => {
  it('all or nothing: one bad row keeps the good ones out and comes back with its fault', async () => {
    const { id, finished } = await takeIn(`${HEAD}\nB-1;6L6GC;40\nB-2;;40\n`)
    expect(await finished).toMatchObject({ state: 'failed', taken: 0, refused: 1, rows: 2 })
    expect(await findTubeByMark('B-1')).toBeNull()
    expect(await textOf(id)).toContain('Type is empty.')
  })

  it('good rows only: the good ones are there, and the corrected rest can follow', async () => {
    const { id, finished } = await takeIn(`${HEAD}\nB-1;6L6GC;40\nB-2;;40\nB-1;EL34;9\n`, false)
    expect(await finished).toMatchObject({ state: 'done', taken: 1, refused: 2 })
    const corrected = (await textOf(id)).replace('B-2,,', 'B-2,EL84,').replace('B-1,EL34', 'B-3,EL34')
    expect(await (await takeIn(corrected)).finished).toMatchObject({ state: 'done', taken: 2, refused: 0 })
    expect(await findTubeByMark('B-3')).toMatchObject({ designation: 'EL34', family: 'EL34' })
  })

  it('a mark that is in the stock is a fault of its row', async () => {
    await tubeInStock({ mark: 'B-9' }, null)
    const { id, finished } = await takeIn(`${HEAD}\nB-9;6L6GC;40\n`)
    expect(await finished).toMatchObject({ taken: 0, refused: 1 })
    expect(await textOf(id)).toContain('B-9 already stands on another one here')
  })

  it('rows without a mark get the next free ones, none of them twice', async () => {
    await tubeInStock({ mark: 'T-0002' }, null)
    const { id, finished } = await takeIn(`${HEAD}\n;6L6GC;1\n;6L6GC;2\n;6L6GC;3\n`)
    expect(await finished).toMatchObject({ taken: 3 })
    const tubes = await database.tube.findMany({ where: { importId: id }, orderBy: { price: 'asc' } })
    expect(tubes.map(({ mark }) => mark)).toEqual(['T-0001', 'T-0003', 'T-0004'])
  })

  it('remembers what the columns meant', async () => {
    const id = await chosen('Bottle,Worth\nEL34,12\n')
    await (await startImport(atBench(), { id, mapping: ['designation', 'price'], allOrNothing: true })).ok
    expect(await findMapping('bottle|worth')).toEqual(['designation', 'price'])
  })

  it('cancelled, leaves nothing behind', async () => {
    const rows = Array.from({ length: 5000 }, (_, place) => `C-${place};6L6GC;40`)
    const { id, finished } = await takeIn(`${HEAD}\n${rows.join('\n')}\n`)
    cancelImport(id)
    expect(await finished).toMatchObject({ state: 'cancelled', taken: 0 })
    expect(await database.tube.count({ where: { importId: id } })).toBe(0)
  })
})

describe('undoing an import', () => {
  it('takes the untouched ones out and keeps, by name, those that something was done with', async () => {
    const { id, finished } = await takeIn(`${HEAD}\nU-1;6L6GC;1\nU-2;6L6GC;2\nU-3;6L6GC;3\nU-4;6L6GC;4\n`)
    await finished
    const tube = async (mark: string) => {
      const found = await findTubeByMark(mark)
      if (!found) throw new Error(`${mark} is not there`)
      return found
    }
    await addTubeTest(atBench(), { tubeId: (await tube('U-1')).id, test: testEntry(), reject: false })
    const second = await tube('U-2')
    await keepTube(atBench(), { id: second.id, version: 1, details: { ...second, location: 'Shelf' }, test: null })
    const third = await tube('U-3')
    await inTransaction((tx) => saveWhereabouts(tx, third, 'sold', NOW))
    expect(await undoImport(atBench(), id)).toEqual({
      ok: true,
      value: { gone: 1, kept: 3, marks: ['U-1', 'U-2', 'U-3'] },
    })
    expect(await findTubeByMark('U-4')).toBeNull()
    expect(await findImport(id)).toMatchObject({ state: 'undone', taken: 3 })
    expect(await undoImport(atBench(), id)).toMatchObject({ fault: { code: 'import-undone-already' } })
  })
})

describe('there and back', () => {
  const bare = ({ tube, tests }: TubeWithTests) => {
    const { id: _id, version: _version, createdAt: _createdAt, ...own } = tube
    return {
      own,
      tests: tests.slice(0, 1).map(({ id: _test, testedAt: _at, ...facts }) => facts),
    }
  }

  it('what was taken out of one shop is the same tubes in another', async () => {
    await database.tube.deleteMany({})
    const further = {
      ...NOTHING_FURTHER,
      glass: '=grey, "smoked"',
      used: 'used',
      box: 'white',
      setName: 'Pair; 1',
    } as const
    const until = {
      warranty: 'ours',
      warrantyUntil: '2031-12-31' as Day,
      hoursBefore: 1200.5,
      reference: true,
    } as const
    const details = tubeDetails({ mark: 'X-1', acquired: '-a lot\nof "two"', cost: money(1250), price: money(4599) })
    await keepTube(atBench(), {
      id: null,
      version: 0,
      details,
      further: { ...further, ...until },
      test: testEntry({ gas: '+ some' }),
    })
    const twin = { screenVoltage: null, gridVoltage: volts(-2), sections: [section(1.21, 1.63), section(1.1, 1.6, 2)] }
    await tubeInStock({ mark: 'X-2', designation: '12AX7', location: '' }, { ...twin, day: '2031-04-30' as Day })
    await tubeInStock({ mark: 'X-3', condition: 'reject' }, { shorts: true, sections: [section(null)] })
    await tubeInStock({ mark: 'X-4', designation: 'Unheard 9', condition: 'as-found' }, null)
    const before = []
    for await (const each of allTubes()) before.push(bare(each))

    const shop = await findShop()
    if (!shop) throw new Error('the shop is open')
    let text = ''
    for await (const part of exportTable('tubes', shop)) text += part
    await database.tube.deleteMany({})
    await database.tubeSet.deleteMany({})
    expect(await (await takeIn(text)).finished).toMatchObject({ state: 'done', taken: 4, refused: 0 })

    const after = []
    for await (const each of allTubes()) after.push(bare(each))
    expect(before).toHaveLength(4)
    expect(after).toEqual(before)
  })
})
