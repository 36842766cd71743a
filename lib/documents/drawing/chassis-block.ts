/**
 * The chassis from above, rear at the top, as on the layout chart in an old cabinet.
 *
 * Words go below, above or beside their socket, the first place where they touch
 * nothing. Where there is none they are listed under the drawing, by position,
 * so that a crowded chassis still says everything.
 */
import type { ChassisBlock, ChassisSocket } from '../paper'
import type { DrawnBlock, Piece } from './piece'
import {
  BLACK,
  type Doc,
  drawLines,
  GREY,
  LABEL,
  lineHeight,
  type Sheet,
  SMALL,
  type Style,
  tagged,
  textWidth,
} from './sheet'
import { wrapText } from './wrap-text'

type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number }
type PlacedSocket = {
  readonly socket: ChassisSocket
  readonly circle: Box
  readonly label: Box
  /** Empty when it does not fit the circle: it then leads the words. A cut name could be another socket's. */
  readonly name: string
  /** Empty when the words went to the list. */
  readonly lines: readonly string[]
}

/** Of a socket with room around it, and the least that still holds its name. */
const RADIUS = 15
const LEAST_RADIUS = 11.5
const EDGE = 24
const POSITION: Style = { font: 'bold', size: 9, ink: BLACK }

const touches = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height
const inside = (a: Box, b: Box): boolean =>
  a.x >= b.x && a.y >= b.y && a.x + a.width <= b.x + b.width && a.y + a.height <= b.y + b.height

type Spot = { readonly across: number; readonly depth: number }

function middleOf(frame: Box, spot: Spot): { x: number; y: number } {
  const share = (percent: number): number => Math.min(100, Math.max(0, percent)) / 100
  return {
    x: frame.x + EDGE + share(spot.across) * (frame.width - 2 * EDGE),
    y: frame.y + EDGE + share(spot.depth) * (frame.height - 2 * EDGE),
  }
}

/** Half the way to the nearest neighbour, so that crowded sockets shrink before they overlap. */
function radiusFor(frame: Box, spots: readonly Spot[]): number {
  const middles = spots.map((spot) => middleOf(frame, spot))
  const ways = middles.flatMap((a, i) => middles.slice(i + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y)))
  return Math.max(LEAST_RADIUS, Math.min(RADIUS, ...ways.map((way) => way / 2 - 0.8)))
}

function circleOf(frame: Box, spot: Spot, radius: number): Box {
  const { x, y } = middleOf(frame, spot)
  return { x: x - radius, y: y - radius, width: 2 * radius, height: 2 * radius }
}

function landmarkBoxes(frame: Box, block: ChassisBlock): Box[] {
  return block.landmarks.map(({ across, depth, width, height }) => {
    const wide = Math.min(frame.width - 4, (width / 100) * (frame.width - 2 * EDGE))
    const high = Math.min(frame.height - 4, (height / 100) * (frame.height - 2 * EDGE))
    const middle = middleOf(frame, { across, depth })
    const x = Math.min(frame.x + frame.width - 2 - wide, Math.max(frame.x + 2, middle.x - wide / 2))
    const y = Math.min(frame.y + frame.height - 2 - high, Math.max(frame.y + 2, middle.y - high / 2))
    return { x, y, width: wide, height: high }
  })
}

function candidates(doc: Doc, circle: Box, lines: readonly string[]): Box[] {
  const width = Math.max(0, ...lines.map((line) => textWidth(doc, line, SMALL))) + 2
  const height = lines.length * lineHeight(SMALL)
  const middleX = circle.x + circle.width / 2 - width / 2
  const middleY = circle.y + circle.height / 2 - height / 2
  return [
    { x: middleX, y: circle.y + circle.height + 1, width, height },
    { x: middleX, y: circle.y - height - 1, width, height },
    { x: circle.x + circle.width + 3, y: middleY, width, height },
    { x: circle.x - width - 3, y: middleY, width, height },
  ]
}

function placeSockets(doc: Doc, frame: Box, block: ChassisBlock): PlacedSocket[] {
  const radius = radiusFor(frame, block.sockets)
  const circles = block.sockets.map((socket) => circleOf(frame, socket, radius))
  const taken: Box[] = [...circles, ...landmarkBoxes(frame, block)]
  return block.sockets.map((socket, i) => {
    const circle = circles[i] ?? circleOf(frame, socket, radius)
    const fits = textWidth(doc, socket.position, POSITION) <= circle.width - 3
    const name = fits ? socket.position : ''
    const lines = [...(fits ? [] : [socket.position]), ...socket.lines].filter((line) => line.trim() !== '')
    const label = candidates(doc, circle, lines).find(
      (box) => inside(box, frame) && !taken.some((other) => touches(box, other)),
    )
    if (label === undefined) return { socket, circle, label: circle, name, lines: [] }
    taken.push(label)
    return { socket, circle, label, name, lines }
  })
}

function drawSocket(doc: Doc, { circle, label, name, lines }: PlacedSocket): void {
  const radius = circle.width / 2
  const x = circle.x + radius
  const y = circle.y + radius
  doc.lineWidth(1.1).strokeColor(BLACK).circle(x, y, radius).stroke()
  doc
    .lineWidth(0.4)
    .strokeColor(GREY)
    .circle(x, y, radius - 2.2)
    .stroke()
  drawLines(
    doc,
    [name],
    { x: circle.x, y: y - lineHeight(POSITION) / 2, width: circle.width, align: 'middle' },
    POSITION,
  )
  drawLines(doc, lines, { ...label, align: 'middle' }, SMALL)
}

function drawLandmarks(doc: Doc, frame: Box, block: ChassisBlock): void {
  const boxes = landmarkBoxes(frame, block)
  block.landmarks.forEach(({ label }, i) => {
    const box = boxes[i]
    if (box === undefined) return
    doc.lineWidth(0.6).strokeColor(GREY).rect(box.x, box.y, box.width, box.height).stroke()
    const lines = wrapText(doc, label, LABEL, box.width - 4)
    const fitting = lines.slice(0, Math.max(0, Math.floor(box.height / lineHeight(LABEL))))
    const y = box.y + (box.height - fitting.length * lineHeight(LABEL)) / 2
    drawLines(doc, fitting, { x: box.x + 2, y, width: box.width - 4, align: 'middle' }, LABEL)
  })
}

/** What the drawing had no room for, a line for each socket. */
function listed(doc: Doc, placed: readonly PlacedSocket[], width: number): string[] {
  return placed
    .filter(({ socket, name, lines }) => lines.length === 0 && (name === '' || socket.lines.length > 0))
    .flatMap(({ socket }) => wrapText(doc, [socket.position, socket.lines.join(', ')].join(': '), SMALL, width))
}

export function drawnChassis(sheet: Sheet, block: ChassisBlock): DrawnBlock {
  const { doc, left, width } = sheet
  const high = 178
  // Placing depends on nothing but the frame's size, so the height is known before the page is.
  const list = listed(doc, placeSockets(doc, { x: left, y: 0, width, height: high }, block), width)
  const caption = wrapText(doc, block.caption, LABEL, width)
  const height = high + 3 + caption.length * lineHeight(LABEL) + list.length * lineHeight(SMALL) + 2
  const draw: Piece['draw'] = (y, parent) => {
    const frame = { x: left, y, width, height: high }
    const words = block.sockets.map(({ position, lines }) => `${position}: ${lines.join(', ')}`).join('; ')
    const options = { alt: `Chassis from above. ${words}`, bbox: [left, y, left + width, y + height] as const }
    tagged(
      doc,
      parent,
      'Figure',
      () => {
        doc.lineWidth(0.8).strokeColor(BLACK).roundedRect(left, y, width, high, 5).stroke()
        drawLandmarks(doc, frame, block)
        for (const placed of placeSockets(doc, frame, block)) drawSocket(doc, placed)
      },
      options,
    )
    tagged(doc, parent, 'P', () => {
      drawLines(doc, caption, { x: left, y: y + high + 3, width }, LABEL)
      drawLines(doc, list, { x: left, y: y + high + 3 + caption.length * lineHeight(LABEL), width }, SMALL)
    })
  }
  return { structure: 'Div', pieces: [{ height, spaceBefore: 4, keepsNext: false, draw }] }
}
