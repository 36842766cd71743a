/**
 * Where the parts of a tube amplifier usually stand, seen from above with the
 * controls towards the viewer: small-signal tubes in chassis order along the
 * front from the input end (left), output tubes in a row at the rear, rectifier
 * and regulator beside the mains transformer (rear right), output transformer
 * rear left. Common practice, no source; a sheet with its own places overrides it.
 *
 * A plan is only a wish: chassis-layout.ts moves what stands in the way.
 */
import type { SocketBase } from './chassis-pins'

export type ChassisRole =
  | 'preamp'
  | 'phase-inverter'
  | 'driver'
  | 'reverb'
  | 'tremolo'
  | 'output'
  | 'rectifier'
  | 'regulator'
  | 'other'

export type ChassisSocketSpec = {
  readonly id: string
  readonly position: string
  readonly role: ChassisRole
  readonly base: SocketBase
  /** 0 left edge to 100 right edge, controls in front; null: automatic. */
  readonly across: number | null
  /** 0 front edge to 100 rear edge; null: automatic. */
  readonly depth: number | null
  /** Lines of lettering under the socket; fewer than the usual number changes nothing. */
  readonly labelLines?: number
}

/** `rowReach` is the widest reach in the row: the lettering of a row starts on one line. */
export type Wish = { readonly x: number; readonly y: number; readonly labelWidth: number; readonly rowReach: number }

export type ChassisPlan = {
  /** One wish for every socket, in the order given. */
  readonly wishes: readonly Wish[]
  readonly innerHeight: number
}

/** Usable breadth of the chassis, in drawing units. */
export const INNER = { left: 30, right: 970 } as const
export const SOCKET_RADIUS: Record<SocketBase, number> = { octal: 46, noval: 37, miniature: 32, other: 42 }
/** Room round a socket for its ring. */
export const RING_ROOM = 16
/** No socket centre comes nearer to an edge of the usable area than this. */
export const EDGE_REACH = 62
export const LINE_PITCH = 19
export const MAINS_TRANSFORMER = { width: 128, height: 190 } as const
export const OUTPUT_TRANSFORMER = { width: 108, height: 156 } as const
export const LABEL_WIDTH = 140

const END_ROOM = 72
const ROW_GAP = 12
/** Between the rings of neighbours. */
const TOUCHING = 6
const LOWEST_INNER_HEIGHT = 350

type Numbered = { readonly spec: ChassisSocketSpec; readonly index: number }

/** `signal` and `outputs` from the left or centred, `supplies` from the right end. */
type Row = {
  readonly main: readonly Numbered[]
  readonly supplies: readonly Numbered[]
  readonly lo: number
  readonly hi: number
  readonly centred: boolean
}

const isSupply = ({ spec }: Numbered) => spec.role === 'rectifier' || spec.role === 'regulator'

export const reachOf = (base: SocketBase): number => SOCKET_RADIUS[base] + RING_ROOM

export function labelHeightOf(spec: ChassisSocketSpec): number {
  const usual = spec.role === 'output' ? 5 : 3
  return Math.max(usual, spec.labelLines ?? 0) * LINE_PITCH + 4
}

/** Share of `all` that falls to row `row` of `rows`, the earlier rows taking the odd ones. */
function shareOf<T>(all: readonly T[], row: number, rows: number): readonly T[] {
  return all.slice(Math.ceil((all.length * row) / rows), Math.ceil((all.length * (row + 1)) / rows))
}

/** How many sockets of the widest kind there is stand side by side between `lo` and `hi`. */
function roomFor(sockets: readonly Numbered[], lo: number, hi: number): number {
  const reach = Math.max(0, ...sockets.map(({ spec }) => reachOf(spec.base)))
  return reach === 0 ? 1 : Math.floor((hi - lo) / (2 * reach + TOUCHING)) + 1
}

const REAR_RIGHT = INNER.right - END_ROOM - MAINS_TRANSFORMER.width - 8
const REAR_LEFT = INNER.left + END_ROOM
const BESIDE_OUTPUT_TRANSFORMER = REAR_LEFT + OUTPUT_TRANSFORMER.width + 8
const FRONT_RIGHT = INNER.right - END_ROOM

/**
 * Rear rows between the transformers: outputs, and the supply tubes at their
 * right end, next to the mains transformer. Supply tubes that would need a row
 * more stand in front of the mains transformer instead, and are left over here.
 */
function rearRows(outputs: readonly Numbered[], supplies: readonly Numbered[]): readonly Row[] {
  const lo = outputs.length > 0 ? BESIDE_OUTPUT_TRANSFORMER : REAR_LEFT
  const room = roomFor([...outputs, ...supplies], lo, REAR_RIGHT)
  const rows = Math.ceil(outputs.length / room) || (supplies.length > 0 && supplies.length <= room ? 1 : 0)
  const fit = outputs.length + supplies.length <= rows * room
  return Array.from({ length: rows }, (_, row) => ({
    main: shareOf(outputs, row, rows),
    // Dealt from the last row back, so that no row gets the odd one of both.
    supplies: fit ? shareOf(supplies, rows - 1 - row, rows) : [],
    lo,
    hi: REAR_RIGHT,
    centred: true,
  }))
}

function frontRows(signal: readonly Numbered[], supplies: readonly Numbered[]): readonly Row[] {
  const all = [...signal, ...supplies]
  const room = roomFor(all, REAR_LEFT, FRONT_RIGHT)
  const rows = Math.ceil(all.length / room)
  const even = Math.ceil(all.length / (rows || 1))
  // The first front row lies in front of the mains transformer and takes the supply tubes.
  const supplyRows = Array.from({ length: rows }, (_, row) => supplies.slice(row * even, (row + 1) * even))
  let taken = 0
  return supplyRows.map((own) => {
    const main = signal.slice(taken, taken + even - own.length)
    taken += main.length
    return { main, supplies: own, lo: REAR_LEFT, hi: FRONT_RIGHT, centred: false }
  })
}

type Spread = { readonly pitch: number; readonly xs: readonly number[] }

function spread({ main, supplies, lo, hi, centred }: Row): Spread {
  const gaps = main.length + supplies.length - 1
  const pitch = gaps > 0 ? Math.min((hi - lo) / gaps, centred ? 186 : 164) : 0
  const mainEnd = hi - supplies.length * pitch
  const first = centred ? lo + (mainEnd - lo - pitch * (main.length - 1)) / 2 : lo
  return {
    pitch,
    xs: [
      ...main.map((_, at) => first + at * pitch),
      ...supplies.map((_, at) => hi - (supplies.length - 1 - at) * pitch),
    ],
  }
}

/** Wishes of one row whose upper edge is at `top`, and the height it takes. */
function planRow(row: Row, top: number): { readonly wishes: ReadonlyMap<number, Wish>; readonly height: number } {
  const { xs, pitch } = spread(row)
  const sockets = [...row.main, ...row.supplies]
  const rowReach = Math.max(...sockets.map(({ spec }) => reachOf(spec.base)))
  const reach = Math.max(EDGE_REACH, rowReach)
  const labels = Math.max(...sockets.map(({ spec }) => labelHeightOf(spec)))
  const labelWidth = pitch > 0 ? Math.min(pitch - 6, LABEL_WIDTH) : LABEL_WIDTH
  const y = top + reach
  const wishes = sockets.map(({ index }, at) => [index, { x: xs[at] ?? row.lo, y, labelWidth, rowReach }] as const)
  return { wishes: new Map(wishes), height: reach + rowReach + labels + ROW_GAP }
}

/** `top` is the upper (rear) edge of the usable area. */
export function planChassis(specs: readonly ChassisSocketSpec[], top: number): ChassisPlan {
  const numbered = specs.map((spec, index) => ({ spec, index }))
  const outputs = numbered.filter(({ spec }) => spec.role === 'output')
  const supplies = numbered.filter(isSupply)
  const rear = rearRows(outputs, supplies)
  const placed = new Set(rear.flatMap((row) => row.supplies))
  const signal = numbered.filter((socket) => socket.spec.role !== 'output' && !isSupply(socket))
  const front = frontRows(
    signal,
    supplies.filter((socket) => !placed.has(socket)),
  )
  const wishes = new Map<number, Wish>()
  let y = top
  for (const row of [...rear, ...front]) {
    if (row === front[0]) y = Math.max(y, top + MAINS_TRANSFORMER.height + ROW_GAP)
    const planned = planRow(row, y)
    for (const [index, wish] of planned.wishes) wishes.set(index, wish)
    y += planned.height
  }
  const ordered = numbered.map(
    ({ index }) => wishes.get(index) ?? { x: 500, y: top + EDGE_REACH, labelWidth: LABEL_WIDTH, rowReach: EDGE_REACH },
  )
  return { wishes: ordered, innerHeight: Math.max(LOWEST_INNER_HEIGHT, y - top) }
}
