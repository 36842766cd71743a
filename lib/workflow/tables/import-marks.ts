/** Marks of the rows of an import: their own, and the next free numbers for those without one. */
import { FIRST_TUBE_NUMBER, markOfNumber } from '@/lib/domain/stock/tube-mark'
import { nextNumbers } from '@/lib/store/counter'
import type { Tx } from '@/lib/store/database'
import { takenMarks } from '@/lib/store/import'

/** An empty mark takes the next free one, but none that stands in another row of the file. */
export async function marksFor(tx: Tx, marks: readonly string[], inFile: ReadonlySet<string>): Promise<string[]> {
  const free = await freeMarks(tx, marks.filter((mark) => mark === '').length, inFile)
  return marks.map((mark) => mark || (free.pop() as string))
}

/** The lowest last, to be taken from the end. */
async function freeMarks(tx: Tx, count: number, inFile: ReadonlySet<string>): Promise<string[]> {
  const free: string[] = []
  while (free.length < count) {
    const wanted = count - free.length
    const first = await nextNumbers(tx, 'tube', FIRST_TUBE_NUMBER, wanted)
    const marks = Array.from({ length: wanted }, (_, place) => markOfNumber(first + place))
    const taken = await takenMarks(tx, marks)
    free.push(...marks.filter((mark) => !taken.has(mark) && !inFile.has(mark)))
  }
  return free.reverse()
}
