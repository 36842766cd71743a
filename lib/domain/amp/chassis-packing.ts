/**
 * Flat geometry of the chassis drawing: do two shapes meet, and where is the
 * nearest place at which a shape meets nothing?
 *
 * Drawing units; y grows downwards, towards the front edge of the chassis.
 */
export type Rect = { readonly x: number; readonly y: number; readonly width: number; readonly height: number }
export type Circle = { readonly x: number; readonly y: number; readonly radius: number }
export type Shape = Rect | Circle
export type Point = { readonly x: number; readonly y: number }

/** Compared as squares: these lines run some hundred thousand times for one drawing. */
const isNearer = (dx: number, dy: number, limit: number): boolean => dx * dx + dy * dy < limit * limit

const isCircle = (shape: Shape): shape is Circle => 'radius' in shape

/** Distance kept between any two shapes. */
export const CLEARANCE = 4

function circleMeetsRect(circle: Circle, rect: Rect): boolean {
  const nearestX = Math.min(Math.max(circle.x, rect.x), rect.x + rect.width)
  const nearestY = Math.min(Math.max(circle.y, rect.y), rect.y + rect.height)
  return isNearer(circle.x - nearestX, circle.y - nearestY, circle.radius + CLEARANCE)
}

function rectsMeet(a: Rect, b: Rect): boolean {
  const apartX = a.x + a.width + CLEARANCE <= b.x || b.x + b.width + CLEARANCE <= a.x
  const apartY = a.y + a.height + CLEARANCE <= b.y || b.y + b.height + CLEARANCE <= a.y
  return !apartX && !apartY
}

/** True when the shapes overlap or come closer than the clearance. */
export function shapesMeet(a: Shape, b: Shape): boolean {
  if (isCircle(a)) {
    if (isCircle(b)) return isNearer(a.x - b.x, a.y - b.y, a.radius + b.radius + CLEARANCE)
    return circleMeetsRect(a, b)
  }
  return isCircle(b) ? circleMeetsRect(b, a) : rectsMeet(a, b)
}

export const meetsAny = (shapes: readonly Shape[], obstacles: readonly Shape[]): boolean =>
  shapes.some((shape) => obstacles.some((obstacle) => shapesMeet(shape, obstacle)))

export function contains(outer: Rect, inner: Rect): boolean {
  const slack = 0.001
  return (
    inner.x >= outer.x - slack &&
    inner.y >= outer.y - slack &&
    inner.x + inner.width <= outer.x + outer.width + slack &&
    inner.y + inner.height <= outer.y + outer.height + slack
  )
}

/** Whole numbers lo…hi, the nearest to `from` first; of two as near, the smaller. */
export function outwards(from: number, lo: number, hi: number): readonly number[] {
  const all = Array.from({ length: Math.max(0, Math.floor(hi) - lo + 1) }, (_, index) => lo + index)
  return all.sort((a, b) => Math.abs(a - from) - Math.abs(b - from) || a - b)
}

type Grid = {
  readonly columns: number
  readonly rows: number
  /** In columns and rows, may lie between them. */
  readonly from: Point
  readonly pointOf: (column: number, row: number) => Point
}

/** The free grid point nearest to `wish`, searched from there outwards so that far rows are never looked at. */
export function nearestOnGrid(wish: Point, grid: Grid, isFree: (at: Point) => boolean) {
  let best: { readonly column: number; readonly row: number; readonly at: Point } | null = null
  let bestDistance = Number.POSITIVE_INFINITY
  const columns = outwards(grid.from.x, 0, grid.columns)
  for (const row of outwards(grid.from.y, 0, grid.rows)) {
    if (Math.abs(grid.pointOf(0, row).y - wish.y) >= bestDistance) break
    for (const column of columns) {
      const at = grid.pointOf(column, row)
      const distance = Math.sqrt((at.x - wish.x) ** 2 + (at.y - wish.y) ** 2)
      if (distance >= bestDistance) break
      if (!isFree(at)) continue
      best = { column, row, at }
      bestDistance = distance
    }
  }
  return best
}

const STEP = 12

/**
 * The free point nearest to `wish`: the wish itself when it is free, else the
 * nearest point of a grid laid over `range`. The answer is always the same.
 * Null when nothing is free.
 */
export function nearestFree(wish: Point, range: Rect, isFree: (at: Point) => boolean): Point | null {
  if (range.width < 0 || range.height < 0) return null
  const start = {
    x: Math.min(Math.max(wish.x, range.x), range.x + range.width),
    y: Math.min(Math.max(wish.y, range.y), range.y + range.height),
  }
  if (isFree(start)) return start
  const grid = {
    columns: range.width / STEP,
    rows: range.height / STEP,
    from: { x: (start.x - range.x) / STEP, y: (start.y - range.y) / STEP },
    pointOf: (column: number, row: number) => ({ x: range.x + column * STEP, y: range.y + row * STEP }),
  }
  return nearestOnGrid(start, grid, isFree)?.at ?? null
}
