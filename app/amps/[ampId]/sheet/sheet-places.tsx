'use client'
import { ChassisEditor } from '@/app/_components/chassis/chassis-editor'
/** Where the sockets stand on the chassis: dragged, moved by keys, or typed as numbers. */
import type { ChassisSocketView } from '@/app/_components/chassis/chassis-view'
import { chassisWords } from '@/app/_components/chassis/chassis-words'
import type { RowValues } from '@/app/_components/form/edit-rows'
import type { SocketBase } from '@/lib/domain/amp/chassis-layout'
import { roleWord, SOCKET_ROLES } from '@/lib/domain/amp/socket'
import { readDecimal } from '@/lib/domain/decimal'
import type { Words } from '@/lib/domain/words'

type Bases = Readonly<Record<string, SocketBase>>

/** What cannot be read is drawn in its automatic place. */
function placeOf(typed: string | undefined): number | null {
  const read = readDecimal(typed ?? '')
  return read.ok ? read.value : null
}

const idOf = (row: RowValues, index: number): string => row.id || `row-${index}`

const typedPlaceOf = ({ across = '', depth = '' }: RowValues) => ({ across, depth })

function viewOf(row: RowValues, index: number, bases: Bases): ChassisSocketView {
  const { position = '', typeFitted = '' } = row
  const role = SOCKET_ROLES.find((each) => each === row.role) ?? 'other'
  return {
    id: idOf(row, index),
    position: position || `socket ${index + 1}`,
    role,
    roleWord: roleWord(role),
    typeFitted,
    base: bases[typeFitted] ?? bases[typeFitted.trim().toUpperCase()] ?? 'other',
    across: placeOf(row.across),
    depth: placeOf(row.depth),
    mark: row.markFitted || null,
    state: 'not-measured',
    stateWord: 'not measured',
    readingLines: [],
    percentOfRating: null,
  }
}

type SheetPlacesProps = { rows: readonly RowValues[]; title: string; words: Words; bases: Bases }

export function SheetPlaces({ rows, title, words, bases }: SheetPlacesProps) {
  return (
    <section className="panel" aria-labelledby="places">
      <h2 id="places">Places on the chassis</h2>
      <p className="soft">
        A socket left alone takes its usual place. Types and roles changed above show here once the sheet is saved.
      </p>
      <ChassisEditor
        title={title}
        sockets={rows.map((row, index) => viewOf(row, index, bases))}
        typed={Object.fromEntries(rows.map((row, index) => [idOf(row, index), typedPlaceOf(row)]))}
        words={chassisWords(words)}
      />
    </section>
  )
}
