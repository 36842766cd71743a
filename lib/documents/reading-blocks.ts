/**
 * Two sets of readings side by side, a socket's "before" straight above its
 * "after", with the conditions of each set: without them two readings cannot be
 * compared.
 */
import type { ReadingSetFacts, SocketReadingFacts } from './facts'
import type { Format } from './format'
import { NO_BREAK, NOT_RECORDED } from './format'
import type { Block, TableRow } from './paper'
import { column, fact, facts, given, heading, plainTable } from './shared-blocks'
import { capital, type Vocabulary } from './words'

const ESTIMATE_NOTE =
  'est.: an assumption enters, as a typical screen share or an equal split. An estimate, not a measurement.'

type NamedSet = { readonly when: string; readonly readings: ReadingSetFacts }

export function readingBlocks(
  before: ReadingSetFacts | null,
  after: ReadingSetFacts | null,
  format: Format,
  v: Vocabulary,
): Block[] {
  const sets: NamedSet[] = []
  if (before !== null) sets.push({ when: 'before', readings: before })
  if (after !== null) sets.push({ when: 'after', readings: after })
  const title = heading(sets.length === 2 ? 'Readings, before and after' : 'Readings')
  if (sets.length === 0) return [title, { type: 'paragraph', text: 'No readings were recorded.', tone: 'plain' }]
  const missing: Block[] =
    sets.length === 2
      ? []
      : [{ type: 'note', text: `No readings were recorded ${before === null ? 'before' : 'after'} the work.` }]
  const estimated = sets.some(({ readings }) => readings.sockets.some((reading) => reading.estimated === true))
  const estimates: Block[] = estimated ? [{ type: 'note', text: ESTIMATE_NOTE }] : []
  const sources = sets.map((set) => conditions(set, format, v))
  return [title, readingTable(sets, format, v), ...estimates, ...missing, ...sources]
}

function readingTable(sets: readonly NamedSet[], format: Format, v: Vocabulary): Block {
  const columns = [
    column('Socket', 2.4),
    column('Read', 1.4),
    column(`${capital(v.plate)} to cathode`, 2, 'end'),
    column(`${capital(v.plate)} current`, 2.6, 'end'),
    column('Dissipation', 2.6, 'end'),
    column('Of the rating', 2.2, 'end'),
    column('Verdict', 3.4),
  ]
  return plainTable(
    columns,
    positions(sets).flatMap((position) => socketRows(position, sets, format)),
  )
}

/** Chassis order of the later set, then what only the earlier one has. */
function positions(sets: readonly NamedSet[]): string[] {
  return [...new Set(sets.toReversed().flatMap(({ readings }) => readings.sockets.map(({ position }) => position)))]
}

function socketRows(position: string, sets: readonly NamedSet[], format: Format): TableRow[] {
  const rows = sets.flatMap(({ when, readings }) => {
    const reading = readings.sockets.find((socket) => socket.position === position)
    return reading === undefined ? [] : [readingCells(reading, when, format)]
  })
  return rows.map((cells, i) => ({ cells, keepsNext: i < rows.length - 1 }))
}

function readingCells(reading: SocketReadingFacts, when: string, format: Format): string[] {
  const { plateVoltage, plateCurrent, plateDissipation, shareOfRating } = reading
  const est = reading.estimated === true ? `est.${NO_BREAK}` : ''
  return [
    `${reading.position} ${reading.type}`,
    when,
    plateVoltage === null ? 'not read' : format.volts(plateVoltage),
    plateCurrent === null ? 'not read' : est + format.bandedMilliamps(plateCurrent),
    plateDissipation === null ? 'not known' : est + format.bandedWatts(plateDissipation),
    shareOfRating === null ? 'not known' : est + format.bandedPercent(shareOfRating),
    reading.verdict,
  ]
}

function conditions({ when, readings }: NamedSet, format: Format, v: Vocabulary): Block {
  const { wallVoltage, warmUp } = readings
  return facts(2, [
    fact(`${capital(when)}: read`, `${format.instant(readings.takenAt)}, ${given(readings.takenBy)}`),
    fact('Method', readings.methods.join('; ')),
    fact(
      `${capital(v.mains)}, warm-up`,
      [
        wallVoltage === null ? `wall voltage ${NOT_RECORDED}` : format.settled(wallVoltage, 'V'),
        warmUp === null ? `warm-up ${NOT_RECORDED}` : format.minutes(warmUp),
        given(readings.signal),
      ].join(', '),
    ),
    fact('Instrument', readings.instruments.join('; ')),
  ])
}
