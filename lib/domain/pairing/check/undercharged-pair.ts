/**
 * Looks for a permitted pair that the duals undercharge, over all pairs. The
 * plane is cut into squares of a few points; a pair of a point and a square
 * is passed over only where no pair in it can be undercharged:
 *
 *   dual of the point + highest dual in the square
 *     - least of the common duals - 2 * distance to the square's nearest point  <=  0
 *
 * The point with the higher dual looks for the other, so it need look no
 * farther than its own dual, nor than the widths.
 */
import type { Certificate } from '../certificate'
import type { Plane } from '../plane'
import type { NestedBlossoms } from './nested-blossoms'
import { SharedDuals } from './shared-duals'

const POINTS_A_SQUARE = 6

export function underchargedPair(
  plane: Plane,
  certificate: Certificate,
  nested: NestedBlossoms,
): readonly [number, number] | null {
  if (plane.x.length < 2) return null
  return new Squares(plane, certificate, nested).undercharged()
}

class Squares {
  private readonly side: number
  private readonly columns: number
  private readonly rows: number
  private readonly west: number
  private readonly south: number
  private readonly squares: number[][]
  private readonly highest: number[]
  /** First and last place of a square's points in the layout. */
  private readonly places: readonly (readonly [number, number])[]
  private readonly shared: SharedDuals

  constructor(
    private readonly plane: Plane,
    private readonly certificate: Certificate,
    private readonly nested: NestedBlossoms,
  ) {
    const [west, east] = ends(plane.x)
    const [south, north] = ends(plane.y)
    const [width, height] = [east - west + 1, north - south + 1]
    const share = POINTS_A_SQUARE / plane.x.length
    this.west = west
    this.south = south
    // The second keeps the squares few where all points lie on a line.
    this.side = Math.ceil(Math.max(1, Math.sqrt(width * height * share), Math.max(width, height) * share))
    this.columns = Math.floor((east - west) / this.side) + 1
    this.rows = Math.floor((north - south) / this.side) + 1
    this.squares = Array.from({ length: this.columns * this.rows }, () => [])
    for (let point = 0; point < plane.x.length; point += 1) this.squares[this.squareOf(point)]?.push(point)
    const duals = certificate.pointDuals
    this.highest = this.squares.map((square) =>
      square.reduce((most, point) => Math.max(most, duals[point] as number), Number.NEGATIVE_INFINITY),
    )
    this.places = this.squares.map((square) => ends(square.map((point) => nested.places[point] as number)))
    this.shared = new SharedDuals(certificate, nested)
  }

  undercharged(): readonly [number, number] | null {
    for (let point = 0; point < this.plane.x.length; point += 1) {
      const other = this.partnerOf(point)
      if (other !== null) return [point, other]
    }
    return null
  }

  private column(x: number): number {
    return Math.floor((x - this.west) / this.side)
  }

  private row(y: number): number {
    return Math.floor((y - this.south) / this.side)
  }

  private squareOf(point: number): number {
    const { x, y } = this.plane
    return this.row(y[point] as number) * this.columns + this.column(x[point] as number)
  }

  private partnerOf(point: number): number | null {
    const { x, y, widthX, widthY } = this.plane
    const reach = this.certificate.pointDuals[point] as number
    if (reach <= 0) return null
    const [px, py] = [x[point] as number, y[point] as number]
    const lastColumn = Math.min(this.columns - 1, this.column(px + Math.min(reach, widthX)))
    const lastRow = Math.min(this.rows - 1, this.row(py + Math.min(reach, widthY)))
    for (let row = Math.max(0, this.row(py - Math.min(reach, widthY))); row <= lastRow; row += 1) {
      for (let column = Math.max(0, this.column(px - Math.min(reach, widthX))); column <= lastColumn; column += 1) {
        const other = this.inSquare(point, row, column)
        if (other !== null) return other
      }
    }
    return null
  }

  private inSquare(point: number, row: number, column: number): number | null {
    const { x, y } = this.plane
    const square = row * this.columns + column
    const [left, bottom] = [this.west + column * this.side, this.south + row * this.side]
    const dx = Math.max(left - (x[point] as number), (x[point] as number) - (left + this.side - 1), 0)
    const dy = Math.max(bottom - (y[point] as number), (y[point] as number) - (bottom + this.side - 1), 0)
    const own = this.certificate.pointDuals[point] as number
    const room = own + (this.highest[square] as number) - 2 * (dx + dy)
    if (room <= 0 || room <= this.leastShared(point, square)) return null
    return this.squares[square]?.find((other) => this.isUndercharged(point, other)) ?? null
  }

  private leastShared(point: number, square: number): number {
    const place = this.nested.places[point] as number
    const [first, last] = this.places[square] as readonly [number, number]
    return this.shared.of(Math.min(place, first), Math.max(place, last))
  }

  private isUndercharged(point: number, other: number): boolean {
    const { x, y, widthX, widthY } = this.plane
    const { pointDuals } = this.certificate
    const [own, facing] = [pointDuals[point] as number, pointDuals[other] as number]
    // Between equals both look.
    if (point === other || facing > own) return false
    const dx = Math.abs((x[point] as number) - (x[other] as number))
    const dy = Math.abs((y[point] as number) - (y[other] as number))
    const excess = own + facing - 2 * (dx + dy)
    if (excess <= 0 || dx > widthX || dy > widthY) return false
    return excess > this.shared.of(this.nested.places[point] as number, this.nested.places[other] as number)
  }
}

function ends(values: Int32Array | readonly number[]): readonly [number, number] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const value of values) {
    least = Math.min(least, value)
    most = Math.max(most, value)
  }
  return [least, most]
}
