/**
 * The rules of an amplifier sheet.
 *
 * Positions are unique, however written ("v3" is "V3"). Bias kind, side, match
 * group and resistor values belong to output sockets; on any other role they
 * are left out and named, because a forgotten value there would look like one
 * that counts. Sides belong to push-pull stages. An output socket without a
 * match group joins the usual one. A part cannot be shared by more tubes than
 * there are output sockets (on that side, when sides are known for all).
 * Shop rules; nothing here is computed from a reading.
 */
import { fail, ok, type Result } from '@/lib/domain/result'
import type { OutputClass } from './amp'
import { type Side, type SocketDetails, USUAL_MATCH_GROUP } from './socket'
import { SOCKET_BOUNDS } from './socket-bounds'

export type SheetFault =
  | { readonly code: 'position-twice'; readonly position: string }
  | {
      readonly code: 'shared-by-too-many'
      readonly position: string
      readonly part: 'cathode resistor' | 'half primary'
      readonly count: number
      /** Output sockets there are: on that side, or on the whole sheet when empty. */
      readonly sockets: number
      readonly side: Side
    }

/** "V1" left out its "cathode resistor" because it is a preamp socket or the stage is single-ended. */
export type LeftOut = { readonly position: string; readonly label: string }

/** Generic over what a row carries besides, such as its id. */
export type Settled<Row> = { readonly sockets: readonly Row[]; readonly leftOut: readonly LeftOut[] }

export function settleSheet<Row extends SocketDetails>(
  outputClass: OutputClass,
  rows: readonly Row[],
): Result<Settled<Row>, SheetFault> {
  const twice = firstTwice(rows.map(({ position }) => position))
  if (twice !== null) return fail({ code: 'position-twice', position: twice })
  const settled = rows.map((row) => settleSocket(outputClass, row))
  const sockets = settled.map(({ socket }) => socket)
  const fault = firstOvershared(sockets)
  return fault ? fail(fault) : ok({ sockets, leftOut: settled.flatMap(({ leftOut }) => leftOut) })
}

const samePosition = (position: string) => position.trim().toUpperCase().replace(/\s+/g, '')

/** The first position that stands there a second time, as written the second time. */
export function firstTwice(positions: readonly string[]): string | null {
  const seen = new Set<string>()
  for (const position of positions) {
    const key = samePosition(position)
    if (key !== '' && seen.has(key)) return position.trim()
    seen.add(key)
  }
  return null
}

const NO_OUTPUT_VALUES = {
  matchGroup: '',
  biasKind: '',
  side: '',
  cathodeOhms: null,
  cathodeSharedBy: 1,
  senseOhms: null,
  screenOhms: null,
  halfPrimaryOhms: null,
  halfSharedBy: 1,
} as const

/** Those worth telling: what was chosen or measured, not what a box starts with. */
const TOLD = {
  biasKind: 'bias kind',
  side: 'side',
  cathodeOhms: SOCKET_BOUNDS.cathodeOhms.label,
  senseOhms: SOCKET_BOUNDS.senseOhms.label,
  screenOhms: SOCKET_BOUNDS.screenOhms.label,
  halfPrimaryOhms: SOCKET_BOUNDS.halfPrimaryOhms.label,
} as const

type Told = keyof typeof TOLD

const isFilled = (value: string | number | null) => value !== null && value !== ''

function leaveOut<Row extends SocketDetails>(row: Row, names: readonly Told[]): readonly LeftOut[] {
  const { position } = row
  return names.filter((name) => isFilled(row[name])).map((name) => ({ position, label: TOLD[name] }))
}

function settleSocket<Row extends SocketDetails>(outputClass: OutputClass, row: Row) {
  if (row.role !== 'output') {
    return { socket: { ...row, ...NO_OUTPUT_VALUES }, leftOut: leaveOut(row, Object.keys(TOLD) as Told[]) }
  }
  const matchGroup = row.matchGroup === '' ? USUAL_MATCH_GROUP : row.matchGroup
  if (outputClass === 'push-pull') return { socket: { ...row, matchGroup }, leftOut: [] }
  return { socket: { ...row, matchGroup, side: '' as const }, leftOut: leaveOut(row, ['side']) }
}

function firstOvershared(sockets: readonly SocketDetails[]): SheetFault | null {
  const outputs = sockets.filter(({ role }) => role === 'output')
  const sidesKnown = outputs.every(({ side }) => side !== '')
  for (const { position, cathodeSharedBy, halfSharedBy, side: itsSide } of outputs) {
    const side = sidesKnown ? itsSide : ''
    const onHalf = outputs.filter((other) => side === '' || other.side === side).length
    const fault = { code: 'shared-by-too-many', position } as const
    if (cathodeSharedBy > outputs.length)
      return { ...fault, part: 'cathode resistor', count: cathodeSharedBy, sockets: outputs.length, side: '' }
    if (halfSharedBy > onHalf) return { ...fault, part: 'half primary', count: halfSharedBy, sockets: onHalf, side }
  }
  return null
}
