/**
 * Where the lettering of a socket stands: a rectangle on one of four sides of
 * its ring, slid along that side as far as it takes to stay within the chassis.
 */
import type { Point, Rect } from './chassis-packing'

export type LabelSide = 'below' | 'above' | 'right' | 'left'

export type Lettered = {
  readonly at: Point
  /** From the centre of the socket to the edge of its lettering. */
  readonly away: number
  readonly width: number
  readonly height: number
}

export const LABEL_GAP = 4

const within = (start: number, size: number, lo: number, room: number): number =>
  Math.max(lo, Math.min(start, lo + room - size))

export function labelAt(side: LabelSide, { at, away, width, height }: Lettered, inner: Rect): Rect {
  const slidX = within(at.x - width / 2, width, inner.x, inner.width)
  const slidY = within(at.y - height / 2, height, inner.y, inner.height)
  switch (side) {
    case 'below':
      return { x: slidX, y: at.y + away, width, height }
    case 'above':
      return { x: slidX, y: at.y - away - height, width, height }
    case 'right':
      return { x: at.x + away, y: slidY, width, height }
    case 'left':
      return { x: at.x - away - width, y: slidY, width, height }
  }
}
