/** A second process for the database test: adds one to the counter `job`, as often as told. */
import { inTransaction, openDatabase } from '@/lib/store/database'

const [path = '', times = '0'] = process.argv.slice(2)
const database = openDatabase(path)
await Promise.all(Array.from({ length: Number(times) }, () => addOne()))
await database.$disconnect()

function addOne() {
  return inTransaction(async (tx) => {
    const { next } = await tx.counter.findUniqueOrThrow({ where: { name: 'job' } })
    await tx.counter.update({ where: { name: 'job' }, data: { next: next + 1 } })
  }, database)
}
