/**
 * The places under the editor's hands: for every socket the two boxes as typed,
 * and the moves that led there. Pure; the editor holds one of these as state.
 */
import { readDecimal } from '@/lib/domain/decimal'
import type { ChassisSocketView } from './chassis-view'

/** As typed; empty is automatic, never zero. */
export type TypedPlace = { readonly across: string; readonly depth: string }
export type TypedPlaces = Readonly<Record<string, TypedPlace>>

export type PlacesState = {
  readonly now: TypedPlaces
  /** Oldest first. */
  readonly before: readonly TypedPlaces[]
  /** What the last change was; steps of one socket under the arrow keys are one move. */
  readonly lastMove: string | null
}

export type PlacesAction =
  | {
      readonly do: 'move'
      readonly id: string
      readonly by: 'hand' | 'keys'
      readonly across: number
      readonly depth: number
    }
  | { readonly do: 'type'; readonly id: string; readonly field: keyof TypedPlace; readonly text: string }
  | { readonly do: 'all-automatic' }
  | { readonly do: 'undo' }

const AUTOMATIC: TypedPlace = { across: '', depth: '' }

const typed = (value: number | null): string => (value === null ? '' : String(value))

/** As typed here, or as it came when it has not been touched. */
export const typedPlace = (socket: ChassisSocketView, places: TypedPlaces): TypedPlace =>
  places[socket.id] ?? { across: typed(socket.across), depth: typed(socket.depth) }

/** Of a form that comes back refused, `before` holds what was typed, readable or not. */
export function placesOf(sockets: readonly ChassisSocketView[], before: TypedPlaces = {}): PlacesState {
  const now = Object.fromEntries(sockets.map((socket) => [socket.id, typedPlace(socket, before)]))
  return { now, before: [], lastMove: null }
}

function changed(state: PlacesState, now: TypedPlaces, move: string): PlacesState {
  const goesOn = state.lastMove === move && !move.startsWith('hand')
  return { now, before: goesOn ? state.before : [...state.before, state.now], lastMove: move }
}

export function changePlaces(state: PlacesState, action: PlacesAction): PlacesState {
  switch (action.do) {
    case 'move': {
      const place = { across: String(action.across), depth: String(action.depth) }
      return changed(state, { ...state.now, [action.id]: place }, `${action.by} ${action.id}`)
    }
    case 'type': {
      const place = { ...(state.now[action.id] ?? AUTOMATIC), [action.field]: action.text }
      return changed(state, { ...state.now, [action.id]: place }, `typing ${action.field} ${action.id}`)
    }
    case 'all-automatic':
      return changed(state, Object.fromEntries(Object.keys(state.now).map((id) => [id, AUTOMATIC])), 'all automatic')
    case 'undo': {
      const now = state.before.at(-1)
      return now ? { now, before: state.before.slice(0, -1), lastMove: null } : state
    }
  }
}

/** Null for an empty box; undefined for one that cannot be read or lies outside 0–100. */
export function readPlace(text: string): number | null | undefined {
  const read = readDecimal(text)
  if (!read.ok) return read.fault === 'empty' ? null : undefined
  return read.value >= 0 && read.value <= 100 ? read.value : undefined
}

/** Cannot be read, lies outside the chassis, or has one number without the other. */
export const isWrongPlace = ({ across, depth }: TypedPlace): boolean =>
  readPlace(across) === undefined ||
  readPlace(depth) === undefined ||
  (readPlace(across) === null) !== (readPlace(depth) === null)

/** The sockets with the places as typed; what cannot be read is drawn in its automatic place. */
export function socketsAt(sockets: readonly ChassisSocketView[], places: TypedPlaces): readonly ChassisSocketView[] {
  return sockets.map((socket) => {
    const { across, depth } = typedPlace(socket, places)
    return { ...socket, across: readPlace(across) ?? null, depth: readPlace(depth) ?? null }
  })
}
