/**
 * A server of its own that takes a list in, to be killed in the middle of it.
 * Usage: take-in-list.ts IMPORT-ID all|good, with BENCHGLOW_DATA naming the shop.
 */
import { guessedColumns } from '@/lib/exchange/tube-columns'
import { chosenTable, startImport } from '@/lib/workflow/tables/import-tubes'
import { atBench } from './person-at-work'

const [id = '', mode] = process.argv.slice(2)
const mapping = guessedColumns((await chosenTable(id))?.headings ?? [])
const started = await startImport(atBench(), { id, mapping, allOrNothing: mode === 'all' })
if (!started.ok) throw new Error(JSON.stringify(started.fault))
await started.value.finished
