/**
 * Sockets in their places with their lettering broken into lines. Laid out
 * twice: the first pass says how wide the lettering may be, the second leaves
 * room for as many lines as that takes.
 */
import {
  type ChassisLayout,
  type ChassisSocketSpec,
  layoutChassis,
  type SocketPlace,
} from '@/lib/domain/amp/chassis-layout'
import { type AllChassisWords, type ChassisSocketView, typeOrNone } from './chassis-view'
import { brokenLines, type Line } from './lettering'

export type LabelLine = Line & { readonly kind: 'type' | 'role' | 'state' | 'reading' }

export type ArrangedSocket = {
  readonly socket: ChassisSocketView
  readonly place: SocketPlace
  readonly lines: readonly LabelLine[]
}

export type Arrangement = {
  readonly layout: ChassisLayout
  readonly specs: readonly ChassisSocketSpec[]
  readonly sockets: readonly ArrangedSocket[]
}

export const LETTER_SIZE = 16
/** Drawn at 17.5 and bold, which runs wider than the estimate. */
const TYPE_SIZE = 19

function labelLines(socket: ChassisSocketView, width: number, words: AllChassisWords): readonly LabelLine[] {
  const broken = (kind: LabelLine['kind'], text: string) =>
    brokenLines(text, kind === 'type' ? TYPE_SIZE : LETTER_SIZE, width).map((line) => ({ ...line, kind }))
  return [
    ...broken('type', typeOrNone(socket, words)),
    ...broken('role', socket.mark ? `${socket.roleWord} · ${words.markWord} ${socket.mark}` : socket.roleWord),
    ...broken('state', socket.stateWord),
    ...socket.readingLines.flatMap((line) => broken('reading', line)),
  ]
}

export function arrangeChassis(views: readonly ChassisSocketView[], words: AllChassisWords): Arrangement {
  const bare = views.map(({ id, position, role, base, across, depth }) => ({ id, position, role, base, across, depth }))
  const first = layoutChassis(bare)
  const linesIn = (places: readonly SocketPlace[]) =>
    views.map((view, index) => labelLines(view, places[index]?.label.width ?? 0, words))
  const lines = linesIn(first.places)
  const specs = bare.map((spec, index) => ({ ...spec, labelLines: lines[index]?.length ?? 0 }))
  const layout = layoutChassis(specs)
  const fitted = linesIn(layout.places)
  const sockets = views.flatMap((socket, index) => {
    const place = layout.places[index]
    return place ? [{ socket, place, lines: fitted[index] ?? [] }] : []
  })
  return { layout, specs, sockets }
}
