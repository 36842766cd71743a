/**
 * Lays a tube amplifier out as seen from above, controls towards the viewer.
 *
 * Sockets with a place of their own keep it; two such circles that would
 * overlap are the only exception: the later one goes to the nearest free whole
 * place and says so. The others take the usual places of chassis-plan.ts or the
 * free place nearest to it. Then the landmarks. If something finds no room the
 * chassis is drawn deeper and everything is laid out again.
 *
 * Drawing units, 1000 wide, height by need. Not to scale: a layout chart says
 * what stands next to what, not how many millimetres apart.
 */
import { centresOf, FRONT_BAND, INNER_TOP, innerOf, outlineOf, percent, wholePlaceAt } from './chassis-frame'
import { type Given, givenSockets, type Settled, settle, settleAll } from './chassis-given'
import { LABEL_GAP, type LabelSide, labelAt } from './chassis-label'
import { contains, meetsAny, nearestFree, type Point, type Rect, type Shape, shapesMeet } from './chassis-packing'
import {
  type ChassisPlan,
  type ChassisSocketSpec,
  LABEL_WIDTH,
  labelHeightOf,
  MAINS_TRANSFORMER,
  OUTPUT_TRANSFORMER,
  planChassis,
  reachOf,
  SOCKET_RADIUS,
} from './chassis-plan'

export type { Rect } from './chassis-packing'
export type { SocketBase } from './chassis-pins'
export type { ChassisRole, ChassisSocketSpec } from './chassis-plan'

export type LandmarkKind = 'mains-transformer' | 'output-transformer' | 'choke' | 'capacitor-can'
export type Landmark = Rect & { readonly kind: LandmarkKind }

export type SocketPlace = {
  readonly id: string
  /** Centre of the socket. */
  readonly x: number
  readonly y: number
  readonly radius: number
  /** Radius with the ring round the socket. */
  readonly reach: number
  /** Where the lettering goes. Never over another socket; over other lettering only when no side is free. */
  readonly label: Rect
  readonly side: LabelSide
  readonly source: 'given' | 'moved-aside' | 'automatic'
  /** Where it stands now, 0–100, whole numbers unless given otherwise. */
  readonly across: number
  readonly depth: number
}

export type ChassisLayout = {
  readonly width: 1000
  readonly height: number
  readonly outline: Rect
  readonly places: readonly SocketPlace[]
  readonly landmarks: readonly Landmark[]
}

const DEEPER_BY = 36
/** After those tries, when something has found no place at all. */
const MUCH_DEEPER_BY = 108
/** Deeper drawings tried only to keep lettering apart. */
const TRIES_FOR_LETTERING = 5
const TRIES = 40

type Draft = { readonly places: Map<number, SocketPlace>; readonly obstacles: Shape[]; crowded: boolean }

const SIDES: readonly LabelSide[] = ['below', 'above', 'right', 'left']

/** Lettering on the first free side, else on the first that lies inside. Null when none does. */
function letter(draft: Draft, inner: Rect, settled: Settled): SocketPlace | null {
  const { spec, at, across, depth } = settled
  const reach = reachOf(spec.base)
  const lettered = { at, away: reach + LABEL_GAP, width: LABEL_WIDTH, height: labelHeightOf(spec) }
  const inside = SIDES.filter((side) => contains(inner, labelAt(side, lettered, inner)))
  const free = inside.find((side) => !meetsAny([labelAt(side, lettered, inner)], draft.obstacles))
  const side = free ?? inside[0]
  if (!side) return null
  if (!free) draft.crowded = true
  const label = labelAt(side, lettered, inner)
  draft.obstacles.push(label)
  const source = settled.moved ? 'moved-aside' : 'given'
  return { id: spec.id, ...at, radius: SOCKET_RADIUS[spec.base], reach, label, side, source, across, depth }
}

function placeGiven(draft: Draft, inner: Rect, given: readonly Given[]): boolean {
  const settled = settleAll(outlineOf(inner), given)
  if (!settled) return false
  for (const { at, spec } of settled) draft.obstacles.push({ ...at, radius: reachOf(spec.base) })
  for (const one of settled) {
    const place = letter(draft, inner, one)
    if (!place) return false
    draft.places.set(one.index, place)
  }
  return true
}

type Block = { readonly kind: LandmarkKind; readonly wish: Point; readonly width: number; readonly height: number }

function placeLandmark(draft: Draft, inner: Rect, block: Block): Landmark | null {
  const { kind, wish, width, height } = block
  const range = { x: inner.x, y: inner.y, width: inner.width - width, height: inner.height - height }
  const at = nearestFree(wish, range, (corner) => !meetsAny([{ ...corner, width, height }], draft.obstacles))
  if (!at) return null
  const rect = { ...at, width, height }
  draft.obstacles.push(rect)
  return { kind, ...rect }
}

function placeAutomatic(draft: Draft, inner: Rect, spec: ChassisSocketSpec, plan: ChassisPlan, index: number): boolean {
  const wish = plan.wishes[index]
  if (!wish) return false
  const reach = reachOf(spec.base)
  const size = { width: wish.labelWidth, height: labelHeightOf(spec) }
  const away = wish.rowReach + LABEL_GAP
  const centres = centresOf(inner)
  const range = { ...centres, height: inner.y + inner.height - size.height - away - centres.y }
  const labelBelow = (at: Point) => labelAt('below', { at, away, ...size }, inner)
  const isFree = (shape: Shape) => !draft.obstacles.some((obstacle) => shapesMeet(shape, obstacle))
  const circleAt = ({ x, y }: Point) => ({ x, y, radius: reach })
  const fits = (at: Point) => isFree(circleAt(at)) && isFree(labelBelow(at)) && contains(inner, labelBelow(at))
  const at = nearestFree(wish, range, fits)
  if (!at) return false
  const label = labelBelow(at)
  draft.obstacles.push(circleAt(at), label)
  const place = wholePlaceAt(outlineOf(inner), at)
  const radius = SOCKET_RADIUS[spec.base]
  draft.places.set(index, { id: spec.id, ...at, radius, reach, label, side: 'below', source: 'automatic', ...place })
  return true
}

function transformers(inner: Rect, specs: readonly ChassisSocketSpec[]): readonly Block[] {
  const right = inner.x + inner.width
  const mains: Block = {
    kind: 'mains-transformer',
    wish: { x: right - MAINS_TRANSFORMER.width, y: inner.y },
    ...MAINS_TRANSFORMER,
  }
  const output: Block = { kind: 'output-transformer', wish: { x: inner.x, y: inner.y }, ...OUTPUT_TRANSFORMER }
  return specs.some(({ role }) => role === 'output') ? [mains, output] : [mains]
}

/** Drawn only where room is left. */
function smallParts(inner: Rect): readonly Block[] {
  const right = inner.x + inner.width
  const bottom = inner.y + inner.height
  return [
    { kind: 'capacitor-can', wish: { x: right - 76, y: bottom - 110 }, width: 76, height: 96 },
    { kind: 'choke', wish: { x: right - 190, y: bottom - 100 }, width: 96, height: 74 },
  ]
}

/** Outputs and supply tubes choose before the small ones, which find room more easily. */
function largestFirst(specs: readonly ChassisSocketSpec[]): readonly (readonly [number, ChassisSocketSpec])[] {
  const rank = ({ role }: ChassisSocketSpec) =>
    role === 'output' ? 0 : role === 'rectifier' || role === 'regulator' ? 1 : 2
  return [...specs.entries()].sort(([, a], [, b]) => rank(a) - rank(b))
}

type Attempt = { readonly layout: ChassisLayout; readonly crowded: boolean }

function attempt(specs: readonly ChassisSocketSpec[], plan: ChassisPlan, innerHeight: number): Attempt | null {
  const inner = innerOf(innerHeight)
  const draft: Draft = { places: new Map(), obstacles: [], crowded: false }
  if (!placeGiven(draft, inner, givenSockets(specs))) return null
  const blocks = transformers(inner, specs).map((block) => placeLandmark(draft, inner, block))
  if (blocks.includes(null)) return null
  for (const [index, spec] of largestFirst(specs)) {
    if (!draft.places.has(index) && !placeAutomatic(draft, inner, spec, plan, index)) return null
  }
  const small = smallParts(inner).map((block) => placeLandmark(draft, inner, block))
  const landmarks = [...blocks, ...small].filter((landmark) => landmark !== null)
  const places = specs.map((_, index) => draft.places.get(index)).filter((place) => place !== undefined)
  const outline = outlineOf(inner)
  const height = outline.y + outline.height + FRONT_BAND
  return { layout: { width: 1000, height, outline, places, landmarks }, crowded: draft.crowded }
}

const deeperBy = (tries: number): number =>
  tries * DEEPER_BY + Math.max(0, tries - TRIES_FOR_LETTERING) * (MUCH_DEEPER_BY - DEEPER_BY)

export function layoutChassis(specs: readonly ChassisSocketSpec[]): ChassisLayout {
  const plan = planChassis(specs, INNER_TOP)
  let crowded: ChassisLayout | null = null
  for (let tries = 0; tries < TRIES; tries += 1) {
    const found = attempt(specs, plan, plan.innerHeight + deeperBy(tries))
    if (found && !found.crowded) return found.layout
    crowded ??= found?.layout ?? null
    if (crowded && tries >= TRIES_FOR_LETTERING) return crowded
  }
  if (crowded) return crowded
  throw new Error(`No room for ${specs.length} sockets in a drawing ${plan.innerHeight + deeperBy(TRIES)} units deep`)
}

export type Move = { readonly id: string; readonly across: number; readonly depth: number }

/**
 * Where a socket put down on a laid out chassis comes to rest: there, or at the
 * nearest whole place free of the other sockets that have places of their own.
 */
export function restingPlace(
  specs: readonly ChassisSocketSpec[],
  outline: Rect,
  move: Move,
): { readonly across: number; readonly depth: number } {
  const spec = specs.find((one) => one.id === move.id)
  if (!spec) throw new Error(`No socket ${move.id} on this chassis`)
  const others = settleAll(outline, givenSockets(specs.filter((one) => one !== spec))) ?? []
  const taken = others.map((other) => ({ ...other.at, radius: reachOf(other.spec.base) }))
  const wish = { spec, index: 0, across: percent(move.across), depth: percent(move.depth) }
  const { across, depth } = settle(outline, wish, taken) ?? wish
  return { across, depth }
}
