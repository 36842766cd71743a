/**
 * The frame of the chassis drawing and its scale: 0–100 across (left to right)
 * and 0–100 deep (front to rear) against drawing units.
 *
 * The scale runs over the places a socket centre may take, so 0 and 100 are
 * the nearest a socket stands to an edge. Assumes a rectangular chassis.
 */
import type { Point, Rect } from './chassis-packing'
import { EDGE_REACH, INNER } from './chassis-plan'

const REAR_BAND = 40
export const FRONT_BAND = 46
const FLANGE = 22
const OUTLINE = { x: INNER.left - FLANGE, width: INNER.right - INNER.left + 2 * FLANGE } as const
export const INNER_TOP = REAR_BAND + FLANGE

export const innerOf = (innerHeight: number): Rect => ({
  x: INNER.left,
  y: INNER_TOP,
  width: INNER.right - INNER.left,
  height: innerHeight,
})

/** Where socket centres may lie. */
export const centresOf = (inner: Rect): Rect => ({
  x: inner.x + EDGE_REACH,
  y: inner.y + EDGE_REACH,
  width: inner.width - 2 * EDGE_REACH,
  height: inner.height - 2 * EDGE_REACH,
})

const innerFrom = (outline: Rect): Rect => ({
  x: outline.x + FLANGE,
  y: outline.y + FLANGE,
  width: outline.width - 2 * FLANGE,
  height: outline.height - 2 * FLANGE,
})

export const percent = (value: number): number => Math.min(100, Math.max(0, value))

export function pointAt(outline: Rect, across: number, depth: number): Point {
  const centres = centresOf(innerFrom(outline))
  return {
    x: centres.x + (percent(across) / 100) * centres.width,
    y: centres.y + (1 - percent(depth) / 100) * centres.height,
  }
}

/** The nearest whole place to a point of the drawing; points outside come in to the edge. */
export function wholePlaceAt(outline: Rect, at: Point): { readonly across: number; readonly depth: number } {
  const centres = centresOf(innerFrom(outline))
  return {
    across: Math.round(percent(((at.x - centres.x) / centres.width) * 100)),
    depth: Math.round(percent((1 - (at.y - centres.y) / centres.height) * 100)),
  }
}

export const outlineOf = (inner: Rect): Rect => ({
  x: OUTLINE.x,
  y: REAR_BAND,
  width: OUTLINE.width,
  height: inner.height + 2 * FLANGE,
})
