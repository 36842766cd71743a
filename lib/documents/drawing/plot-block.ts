/**
 * Plate curves on a paper: the frame on the left, what its marks mean on the right.
 *
 * Names stand beside their points, the first place where they touch nothing; where
 * there is none the name is left out: the table of readings has it.
 */

import { spreadLabels } from '@/lib/domain/plot/spread-labels'
import type { PlotBlock, PlotCurve, PlotLegendLine, PlotMark, PlotPlace } from '../paper'
import type { DrawnBlock, Piece } from './piece'
import {
  BLACK,
  type Doc,
  drawLines,
  EMBER,
  GREY,
  HAIRLINE,
  LABEL,
  lineHeight,
  type Sheet,
  SMALL,
  STRONG,
  type Style,
  tagged,
  textWidth,
} from './sheet'
import { wrapText } from './wrap-text'

type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

const FRAME_HEIGHT = 150
const FRAME_SHARE = 0.58
/** For the scale at the left and the curve labels at the right. */
const SCALE = 30
const LABELS = 34
const HEAT = '#f3dccb'
const MARK: Style = { font: 'bold', size: 8.5, ink: BLACK }
const LABEL_HIGH = lineHeight(LABEL)
const SWATCH = 26

const placeOf =
  (frame: Box) =>
  ([across, up]: PlotPlace): readonly [number, number] => [
    frame.x + across * frame.width,
    frame.y + (1 - up) * frame.height,
  ]

function trace(doc: Doc, frame: Box, line: readonly PlotPlace[]): Doc {
  line.map(placeOf(frame)).forEach(([x, y], i) => {
    if (i === 0) doc.moveTo(x, y)
    else doc.lineTo(x, y)
  })
  return doc
}

function drawRulings(doc: Doc, frame: Box, { acrossTicks, upTicks }: PlotBlock): void {
  doc.lineWidth(0.4).strokeColor(HAIRLINE)
  for (const { at } of acrossTicks) {
    const x = frame.x + at * frame.width
    doc.moveTo(x, frame.y).lineTo(x, frame.y + frame.height)
  }
  for (const { at } of upTicks) {
    const y = frame.y + (1 - at) * frame.height
    doc.moveTo(frame.x, y).lineTo(frame.x + frame.width, y)
  }
  doc.stroke()
}

function drawScales(doc: Doc, frame: Box, block: PlotBlock): void {
  const foot = frame.y + frame.height + 2
  for (const { at, label } of block.acrossTicks) {
    drawLines(doc, [label], { x: frame.x + at * frame.width - 20, y: foot, width: 40, align: 'middle' }, LABEL)
  }
  for (const { at, label } of block.upTicks) {
    const y = frame.y + (1 - at) * frame.height - LABEL_HIGH / 2
    drawLines(doc, [label], { x: frame.x - SCALE, y, width: SCALE - 4, align: 'end' }, LABEL)
  }
  const above = frame.y - LABEL_HIGH - 3
  drawLines(doc, [block.upUnit], { x: frame.x - SCALE, y: above, width: SCALE - 4, align: 'end' }, LABEL)
  const title = { x: frame.x, y: foot + LABEL_HIGH, width: frame.width, align: 'middle' } as const
  drawLines(doc, [block.acrossTitle], title, LABEL)
}

const endOf = ({ line }: PlotCurve): PlotPlace => line.at(-1) ?? [0, 0]

function drawCurveLabels(doc: Doc, frame: Box, { curves, curvesTitle }: PlotBlock): void {
  const right = frame.x + frame.width
  const above = frame.y - LABEL_HIGH - 3
  drawLines(doc, [curvesTitle], { x: right + 6, y: above, width: LABELS }, LABEL)
  const ends = curves.filter(({ leaves }) => leaves === 'right')
  const heights = spreadLabels(
    ends.map((curve) => endOf(curve)[1] * frame.height),
    LABEL_HIGH,
  )
  ends.forEach((curve, i) => {
    const y = frame.y + frame.height - (heights[i] ?? 0)
    doc.lineWidth(0.4).strokeColor(GREY)
    doc
      .moveTo(right, placeOf(frame)(endOf(curve))[1])
      .lineTo(right + 5, y)
      .stroke()
    drawLines(doc, [curve.label], { x: right + 7, y: y - LABEL_HIGH / 2, width: LABELS }, SMALL)
  })
  for (const curve of curves.filter(({ leaves }) => leaves === 'top')) {
    const [x] = placeOf(frame)(endOf(curve))
    drawLines(doc, [curve.label], { x: x - 15, y: above, width: 30, align: 'middle' }, SMALL)
  }
}

function drawHeat(doc: Doc, frame: Box, { limit }: PlotBlock): void {
  if (!limit) return
  if (limit.region.length > 0) trace(doc, frame, limit.region).closePath().fill(HEAT)
}

function drawLimit(doc: Doc, frame: Box, { limit }: PlotBlock): void {
  if (!limit || limit.line.length === 0) return
  trace(doc, frame, limit.line).lineWidth(1.3).dash(4, { space: 2 }).strokeColor(EMBER).stroke().undash()
}

function drawCurves(doc: Doc, frame: Box, block: PlotBlock): void {
  for (const { line } of block.curves) trace(doc, frame, line).lineWidth(0.8).strokeColor(BLACK).stroke()
  drawLimit(doc, frame, block)
  if (block.load.length === 0) return
  trace(doc, frame, block.load).lineWidth(1).dash(7, { space: 2 }).strokeColor(GREY).stroke().undash()
}

function drawBox(doc: Doc, { x, y, width, height }: Box): void {
  doc.lineWidth(0.7).strokeColor(BLACK).rect(x, y, width, height).stroke()
}

function drawPoint(doc: Doc, shape: PlotMark['shape'], x: number, y: number): void {
  doc.lineWidth(1).strokeColor(BLACK).circle(x, y, 2)
  if (shape === 'filled') doc.fillAndStroke(BLACK, BLACK)
  else doc.fillAndStroke('#ffffff', BLACK)
}

const touches = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height
const inside = (a: Box, b: Box): boolean =>
  a.x >= b.x && a.y >= b.y && a.x + a.width <= b.x + b.width && a.y + a.height <= b.y + b.height

function drawNames(doc: Doc, frame: Box, { marks, names }: PlotBlock): void {
  const height = lineHeight(MARK)
  const taken: Box[] = marks.map(({ at }) => {
    const [x, y] = placeOf(frame)(at)
    return { x: x - 3, y: y - 3, width: 6, height: 6 }
  })
  for (const { at, label, side } of names) {
    const [x, y] = placeOf(frame)(at)
    const width = textWidth(doc, label, MARK) + 3
    const lefts = [x + 5, x - 5 - width]
    const above = [0, 1, 2, 3].flatMap((step) => [-height * (step + 0.8), height * (step - 0.2)])
    const lifts = side === 'above' ? above : above.map((lift) => -lift - height)
    const spot = lifts
      .flatMap((lift) => lefts.map((left) => ({ x: left, y: y + lift, width, height })))
      .find((box) => inside(box, frame) && !taken.some((other) => touches(box, other)))
    if (!spot) continue
    taken.push(spot)
    doc.rect(spot.x, spot.y + 1, spot.width, spot.height - 2)
    doc.fillOpacity(0.8).fill('#ffffff').fillOpacity(1)
    drawLines(doc, [label], { x: spot.x + 1.5, y: spot.y, width: spot.width }, MARK)
  }
}

function drawMarks(doc: Doc, frame: Box, block: PlotBlock): void {
  const { marks } = block
  const place = placeOf(frame)
  for (const { box } of marks) {
    const [[left, foot], [right, head]] = [place(box[0]), place(box[1])]
    drawBox(doc, { x: left, y: head, width: right - left, height: foot - head })
  }
  for (const { at, shape } of marks) drawPoint(doc, shape, ...place(at))
  drawNames(doc, frame, block)
}

function drawFrame(doc: Doc, frame: Box, block: PlotBlock): void {
  drawHeat(doc, frame, block)
  drawRulings(doc, frame, block)
  drawCurves(doc, frame, block)
  doc.lineWidth(1).strokeColor(BLACK).rect(frame.x, frame.y, frame.width, frame.height).stroke()
  drawScales(doc, frame, block)
  drawCurveLabels(doc, frame, block)
  drawMarks(doc, frame, block)
}

function drawSwatch(doc: Doc, kind: PlotLegendLine['kind'], x: number, y: number): void {
  const middle = y + LABEL_HIGH / 2
  switch (kind) {
    case 'curve':
      doc
        .lineWidth(0.8)
        .strokeColor(BLACK)
        .moveTo(x, middle + 3)
        .bezierCurveTo(x + 3, middle - 3, x + 8, middle - 3, x + 20, middle - 3)
        .stroke()
      return
    case 'heat':
      doc.rect(x, middle - 4, 20, 4).fill(HEAT)
      doc
        .lineWidth(1.3)
        .dash(4, { space: 2 })
        .strokeColor(EMBER)
        .moveTo(x, middle)
        .lineTo(x + 20, middle)
        .stroke()
        .undash()
      return
    case 'load':
      doc
        .lineWidth(1)
        .dash(7, { space: 2 })
        .strokeColor(GREY)
        .moveTo(x, middle - 3)
        .lineTo(x + 20, middle + 3)
        .stroke()
        .undash()
      return
    case 'box':
      drawBox(doc, { x: x + 4, y: middle - 3.5, width: 12, height: 7 })
      return
    case 'point':
      drawPoint(doc, 'filled', x + 10, middle)
      return
    case 'point-before':
      drawPoint(doc, 'open', x + 10, middle)
  }
}

type LegendEntry = { readonly kind: PlotLegendLine['kind']; readonly lines: readonly string[]; readonly down: number }

function legendEntries(doc: Doc, block: PlotBlock, width: number): { entries: LegendEntry[]; height: number } {
  let height = 0
  const entries = block.legend.map(({ kind, text }) => {
    const lines = wrapText(doc, text, SMALL, width - SWATCH)
    const entry = { kind, lines, down: height }
    height += lines.length * lineHeight(SMALL) + 2
    return entry
  })
  return { entries, height }
}

export function drawnPlot(sheet: Sheet, block: PlotBlock): DrawnBlock {
  const { doc, left, width } = sheet
  const title = wrapText(doc, block.title, STRONG, width)
  const head = title.length * lineHeight(STRONG) + LABEL_HIGH + 6
  const frameWidth = FRAME_SHARE * width
  const legendX = left + SCALE + frameWidth + LABELS + 10
  const legendWidth = left + width - legendX
  const { entries, height: legendHeight } = legendEntries(doc, block, legendWidth)
  const height = head + Math.max(FRAME_HEIGHT + 2 * LABEL_HIGH + 4, legendHeight) + 2
  const draw: Piece['draw'] = (y, parent) => {
    tagged(doc, parent, 'P', () => drawLines(doc, title, { x: left, y, width }, STRONG))
    const frame = { x: left + SCALE, y: y + head, width: frameWidth, height: FRAME_HEIGHT }
    const bbox = [left, y, legendX - 8, y + height] as const
    tagged(doc, parent, 'Figure', () => drawFrame(doc, frame, block), { alt: block.spoken, bbox })
    tagged(doc, parent, 'P', () => {
      for (const { kind, lines, down } of entries) {
        drawSwatch(doc, kind, legendX, frame.y + down)
        drawLines(doc, lines, { x: legendX + SWATCH, y: frame.y + down, width: legendWidth - SWATCH }, SMALL)
      }
    })
  }
  return { structure: 'Div', pieces: [{ height, spaceBefore: 8, keepsNext: false, draw }] }
}
