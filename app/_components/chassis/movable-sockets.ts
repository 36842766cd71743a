'use client'
/** Moving sockets of the drawing: state of the editor, and what pointer and keys do to it. */
import { type KeyboardEvent, type PointerEvent, useMemo, useReducer, useRef, useState } from 'react'
import { wholePlaceAt } from '@/lib/domain/amp/chassis-frame'
import { restingPlace } from '@/lib/domain/amp/chassis-layout'
import { type ArrangedSocket, type Arrangement, arrangeChassis } from './arrange-chassis'
import { type ChassisSocketView, type ChassisWords, withUsualWords } from './chassis-view'
import { changePlaces, placesOf, socketsAt, type TypedPlaces } from './socket-places'

type Place = { readonly across: number; readonly depth: number }
/** A socket in hand. The layout stands still as it was `held` until the pointer lets go. */
export type Drag = Place & {
  readonly id: string
  readonly held: Arrangement
  /** From the pointer to the centre of the socket. */
  readonly offset: { x: number; y: number }
  readonly moved: boolean
}

/** Hand moves snap to every second step of the scale. */
const SNAP = 2
const snapped = (value: number): number => Math.round(value / SNAP) * SNAP

const KEYS: Record<string, readonly [across: number, depth: number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

const within = (value: number): number => Math.min(100, Math.max(0, value))

function pointOnSheet(svg: SVGSVGElement | null, event: PointerEvent): { x: number; y: number } | null {
  const matrix = svg?.getScreenCTM()
  if (!matrix) return null
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse())
  return { x, y }
}

type MovableProps = {
  readonly sockets: readonly ChassisSocketView[]
  readonly words: ChassisWords
  readonly typed?: TypedPlaces
}

export function useMovableSockets({ sockets, words, typed }: MovableProps) {
  const all = useMemo(() => withUsualWords(words), [words])
  const [state, change] = useReducer(changePlaces, sockets, (all) => placesOf(all, typed))
  const [drag, showDrag] = useState<Drag | null>(null)
  // Pointer events can come faster than renders; what they build on lies here.
  const inHand = useRef<Drag | null>(null)
  const setDrag = (next: Drag | null) => {
    inHand.current = next
    showDrag(next)
  }
  const [said, setSaid] = useState('')
  const placed = useMemo(() => socketsAt(sockets, state.now), [sockets, state.now])
  const settled = useMemo(() => arrangeChassis(placed, all), [placed, all])
  const positionOf = (id: string) => sockets.find((socket) => socket.id === id)?.position ?? ''
  const tell = (id: string, { across, depth }: Place) => setSaid(`${positionOf(id)}: ${across} across, ${depth} deep`)

  const putDown = (id: string, wished: Place, by: 'hand' | 'keys') => {
    const rest = restingPlace(settled.specs, settled.layout.outline, { id, ...wished })
    change({ do: 'move', id, by, ...rest })
    const aside = rest.across !== wished.across || rest.depth !== wished.depth
    tell(id, rest)
    if (aside)
      setSaid(`${positionOf(id)}: ${rest.across} across, ${rest.depth} deep, beside the socket that stands there`)
  }
  return { all, state, change, drag, inHand, setDrag, said, setSaid, tell, putDown, settled }
}

export type Movable = ReturnType<typeof useMovableSockets>

/** Taking hold, carrying and letting go. Escape or a lost pointer leaves the socket where it was. */
export function dragHandlers(movable: Movable, svg: () => SVGSVGElement | null, { socket, place }: ArrangedSocket) {
  const { inHand, setDrag, settled, tell, putDown } = movable
  const own = () => (inHand.current?.id === socket.id ? inHand.current : null)
  return {
    onPointerDown: (event: PointerEvent<SVGGElement>) => {
      const at = pointOnSheet(svg(), event)
      if (!at || event.button !== 0 || !event.isPrimary) return
      event.currentTarget.setPointerCapture(event.pointerId)
      const offset = { x: place.x - at.x, y: place.y - at.y }
      setDrag({ id: socket.id, held: settled, offset, across: place.across, depth: place.depth, moved: false })
    },
    onPointerMove: (event: PointerEvent<SVGGElement>) => {
      const mine = own()
      const at = mine && pointOnSheet(svg(), event)
      if (!mine || !at) return
      const whole = wholePlaceAt(mine.held.layout.outline, { x: at.x + mine.offset.x, y: at.y + mine.offset.y })
      const next = { across: snapped(whole.across), depth: snapped(whole.depth) }
      // A finger that only touches must not move a socket off its own odd place.
      const still = Math.abs(whole.across - place.across) < SNAP && Math.abs(whole.depth - place.depth) < SNAP
      if (still && !mine.moved) return
      setDrag({ ...mine, ...next, moved: true })
      tell(socket.id, next)
    },
    onPointerUp: () => {
      const mine = own()
      if (!mine) return
      setDrag(null)
      if (mine.moved) putDown(socket.id, { across: mine.across, depth: mine.depth }, 'hand')
    },
    onPointerCancel: () => setDrag(null),
  }
}

export function keyHandler(movable: Movable, { socket, place }: ArrangedSocket) {
  return (event: KeyboardEvent<SVGGElement>) => {
    if (event.key === 'Escape') movable.setDrag(null)
    const step = KEYS[event.key]
    if (!step || event.altKey || event.ctrlKey || event.metaKey) return
    event.preventDefault()
    const by = event.shiftKey ? 5 : 1
    const across = within(Math.round(place.across) + step[0] * by)
    const depth = within(Math.round(place.depth) + step[1] * by)
    movable.putDown(socket.id, { across, depth }, 'keys')
  }
}
