/** Fits one key (type or section) to rows, whichever kind it is. */

import type { AmplifyingParameters } from '@/lib/domain/model/plate-curves'
import { HANDBOOK } from '@/lib/domain/tube/handbook'
import { fitPentode } from './fit-pentode'
import { fitTriode } from './fit-triode'
import type { ModelRow } from './model-row'

const PENTODES = new Set(['beam-tetrode', 'power-pentode', 'triode-pentode', 'signal-pentode'])

function classOf(row: ModelRow): string {
  const found = HANDBOOK.find((type) => type.id === row.typeId)
  if (!found) throw new Error(`No tube type has the id ${row.typeId}`)
  return found.tubeClass
}

const isPentode = (row: ModelRow): boolean => PENTODES.has(classOf(row)) && !row.key.includes(':')

export function fitType(rows: readonly ModelRow[]): AmplifyingParameters {
  const [first] = rows
  if (!first) throw new Error('A type is fitted to at least one row, got none')
  if (!isPentode(first)) return fitTriode(rows)
  const printedMu = rows.find((row) => row.screenGridMu !== null)?.screenGridMu ?? null
  return fitPentode(rows, { printedMu, plateResistance: classOf(first) !== 'signal-pentode' })
}
