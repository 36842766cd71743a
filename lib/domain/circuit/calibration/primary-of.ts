/** Which half of the primary each socket hangs on, and the ohms of the halves, as the sheet tells. */

import type { AmpSheet } from '@/lib/domain/amp/amp'
import type { Socket } from '@/lib/domain/amp/socket'
import type { Assumption } from '@/lib/domain/circuit/amp/assumption'
import type { PrimarySide } from '@/lib/domain/circuit/output-stage'
import { type Ohms, ohms } from '@/lib/domain/units'

export type Primary = {
  /** In the order of the sockets. */
  readonly sides: readonly PrimarySide[]
  readonly half: Readonly<Record<PrimarySide, Ohms>>
  readonly assumptions: readonly Assumption[]
}

const noted = ({ side }: Socket): PrimarySide => (side === 'B' ? 'b' : 'a')

const positions = (sockets: readonly Socket[]): string[] => sockets.map(({ position }) => position)

function ohmsOf(sockets: readonly Socket[], sides: readonly PrimarySide[], side: PrimarySide): number | null {
  const known = sockets.find(({ halfPrimaryOhms }, i) => sides[i] === side && halfPrimaryOhms !== null)
  return known?.halfPrimaryOhms ?? null
}

/** A half that was not measured is taken as the other; none at all as no resistance, which moves a plate by some volts. */
export function primaryOf({ amp }: AmpSheet, sockets: readonly Socket[]): Primary {
  const pushPull = amp.outputClass === 'push-pull' && sockets.length > 1
  const sideless = pushPull && sockets.some(({ side }) => side === '')
  const sides = sockets.map((socket, i): PrimarySide => {
    if (!pushPull) return 'a'
    if (!sideless) return noted(socket)
    return i % 2 === 0 ? 'a' : 'b'
  })
  const [a, b] = [ohmsOf(sockets, sides, 'a'), ohmsOf(sockets, sides, 'b')]
  const unread = sockets.filter((_, i) => (sides[i] === 'a' ? a : b) === null)
  return {
    sides,
    half: { a: ohms(a ?? b ?? 0), b: ohms(b ?? a ?? 0) },
    assumptions: [
      ...(sideless ? [{ code: 'sides-not-known', sockets: positions(sockets) } satisfies Assumption] : []),
      ...(unread.length > 0
        ? [{ code: 'half-primary-not-known', sockets: positions(unread) } satisfies Assumption]
        : []),
    ],
  }
}
