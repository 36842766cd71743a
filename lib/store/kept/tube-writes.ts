/**
 * Which tubes may no longer be as they were read, so that what is kept of a stock need never
 * be old.
 *
 * Triggers that live on the writer connection alone (TEMP: nothing of them is in the file)
 * note the tube of every row written, whoever wrote it and in whatever words: the client,
 * a bulk INSERT, a foreign key that deletes. A write of another process or connection cannot
 * be seen that way; it moves SQLite's `data_version`, and then everything counts as changed.
 *
 * A note is made before the change is committed. It is therefore crossed out only while the
 * writer has no transaction open: until then it is handed out again and again.
 */
import type { Database } from 'better-sqlite3'

export type TubeChanges = {
  /** All may have changed; the two lists then say nothing. */
  readonly everything: boolean
  readonly tubes: ReadonlySet<string>
  /** Jobs that came, went or were numbered anew: tubes held for them are called by the number. */
  readonly jobs: ReadonlySet<string>
}

/** Beyond it the whole stock is read sooner. */
const MOST_NOTES = 20_000

const EVERYTHING: TubeChanges = { everything: true, tubes: new Set(), jobs: new Set() }

export class TubeWrites {
  private readonly tubes = new Set<string>()
  private readonly jobs = new Set<string>()
  private writer: Database | null = null
  private overflown = false
  private triggersLaid = false
  private version: unknown = null

  /** The writer, once it is there; again when it was closed and opened anew. */
  watch(writer: Database): void {
    this.writer = writer
    this.version = null
    writer.function('benchglow_note_tube', (id) => this.note(this.tubes, id))
    writer.function('benchglow_note_job', (id) => this.note(this.jobs, id))
    this.layTriggers(writer)
  }

  /** Since it was last asked. */
  changes(): TubeChanges {
    const { writer } = this
    if (!writer?.open) return EVERYTHING
    const version = writer.pragma('data_version', { simple: true })
    const isForeign = version !== this.version
    this.version = version
    // Another process may have built a table anew, and the triggers went with the old one.
    if (isForeign || !this.triggersLaid) this.layTriggers(writer)
    const everything = isForeign || !this.triggersLaid || this.overflown
    const found = everything ? EVERYTHING : { everything, tubes: new Set(this.tubes), jobs: new Set(this.jobs) }
    if (!writer.inTransaction) this.crossOut()
    return found
  }

  private crossOut(): void {
    this.tubes.clear()
    this.jobs.clear()
    this.overflown = false
  }

  private note(notes: Set<string>, id: unknown): null {
    if (typeof id === 'string' && !this.overflown) notes.add(id)
    if (notes.size > MOST_NOTES) {
      this.overflown = true
      notes.clear()
    }
    return null
  }

  /** Not within a transaction, whose end may take them back. */
  private layTriggers(writer: Database): void {
    this.triggersLaid = false
    if (writer.inTransaction) return
    const tables = writer.prepare(`SELECT COUNT(*) FROM main.sqlite_master WHERE type = 'table' AND name IN (${NAMES})`)
    if (Number(tables.pluck().get()) !== WATCHED.length) return
    writer.exec(TRIGGERS)
    this.triggersLaid = true
  }
}

/** All that `listStockForFamily` reads: tests by their tube, and the names of sets and jobs that tubes are shown with. */
const WATCHED = ['Tube', 'TubeTest', 'TubeSet', 'Job'] as const
const NAMES = WATCHED.map((name) => `'${name}'`).join(', ')

type Row = 'OLD' | 'NEW'

const NOTES: Readonly<Record<(typeof WATCHED)[number], (row: Row) => string>> = {
  Tube: (row) => `SELECT benchglow_note_tube(${row}."id")`,
  TubeTest: (row) => `SELECT benchglow_note_tube(${row}."tubeId")`,
  TubeSet: (row) => `SELECT benchglow_note_tube("id") FROM "Tube" WHERE "setId" = ${row}."id"`,
  Job: (row) => `SELECT benchglow_note_job(${row}."id")`,
}

const ROWS = { INSERT: ['NEW'], UPDATE: ['OLD', 'NEW'], DELETE: ['OLD'] } as const

const trigger = (table: (typeof WATCHED)[number], event: keyof typeof ROWS): string => {
  // A job is saved at every step, and only its number is told of a tube.
  const of = table === 'Job' && event === 'UPDATE' ? 'UPDATE OF "id", "number"' : event
  const notes = ROWS[event].map((row) => `${NOTES[table](row)};`).join(' ')
  return `CREATE TEMP TRIGGER IF NOT EXISTS "benchglow_${table}_${event}" AFTER ${of} ON main."${table}" BEGIN ${notes} END;`
}

const TRIGGERS = WATCHED.flatMap((table) =>
  (Object.keys(ROWS) as (keyof typeof ROWS)[]).map((event) => trigger(table, event)),
).join('\n')
