/**
 * Usual line-ups of sockets to start an empty sheet from. They name positions,
 * roles, sides and sharing, as commonly found (common practice, no source).
 * Types and resistances stay empty: those are read and measured on the amplifier.
 */
import type { OutputClass } from './amp'
import { plainSocket, type SocketBiasKind, type SocketDetails, type SocketRole } from './socket'

export const LAYOUT_NAMES = ['single-ended', 'cathode-pair', 'grid-pair', 'grid-quad'] as const
export type LayoutName = (typeof LAYOUT_NAMES)[number]

export const RECTIFIERS = ['with-rectifier', 'without-rectifier'] as const
export type RectifierChoice = (typeof RECTIFIERS)[number]

type Layout = {
  readonly text: string
  readonly outputClass: OutputClass
  readonly small: readonly SocketRole[]
  readonly biasKind: SocketBiasKind
  /** From left to right; empty for the one tube of a single-ended stage. */
  readonly sides: readonly ('A' | 'B' | '')[]
}

const LAYOUTS: Record<LayoutName, Layout> = {
  'single-ended': {
    text: 'Single-ended',
    outputClass: 'single-ended',
    small: ['preamp'],
    biasKind: 'cathode-resistor',
    sides: [''],
  },
  'cathode-pair': {
    text: 'Pair on a cathode resistor',
    outputClass: 'push-pull',
    small: ['preamp', 'phase-inverter'],
    biasKind: 'cathode-resistor',
    sides: ['A', 'B'],
  },
  'grid-pair': {
    text: 'Grid-supplied pair',
    outputClass: 'push-pull',
    small: ['preamp', 'preamp', 'phase-inverter'],
    biasKind: 'grid-supplied',
    sides: ['A', 'B'],
  },
  'grid-quad': {
    text: 'Grid-supplied quad',
    outputClass: 'push-pull',
    small: ['preamp', 'preamp', 'phase-inverter'],
    biasKind: 'grid-supplied',
    sides: ['A', 'A', 'B', 'B'],
  },
}

export const layoutText = (name: LayoutName): string => LAYOUTS[name].text

export type UsualLayout = { readonly outputClass: OutputClass; readonly sockets: readonly SocketDetails[] }

export function usualLayout(name: LayoutName, rectifier: RectifierChoice): UsualLayout {
  const { outputClass, small, biasKind, sides } = LAYOUTS[name]
  const output = { ...plainSocket('', 'output'), biasKind, ...sharing(sides, biasKind) }
  const sockets = [
    ...small.map((role) => plainSocket('', role)),
    ...sides.map((side) => ({ ...output, side })),
    ...(rectifier === 'with-rectifier' ? [plainSocket('', 'rectifier')] : []),
  ]
  return { outputClass, sockets: sockets.map((socket, place) => ({ ...socket, position: `V${place + 1}` })) }
}

function sharing(sides: readonly string[], biasKind: SocketBiasKind) {
  const onHalf = Math.max(1, sides.filter((side) => side === 'A').length)
  return { cathodeSharedBy: biasKind === 'cathode-resistor' ? sides.length : 1, halfSharedBy: onHalf }
}
