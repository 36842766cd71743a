/**
 * What a box of the sheet takes, inclusive, in the unit shown beside it. Wide
 * enough for anything met in a tube amplifier; they catch slipped decimals and
 * kilohms typed for ohms. Common practice, no source.
 */
export type SocketBound = {
  readonly label: string
  readonly unit: string
  readonly min: number
  readonly max: number
  readonly whole?: boolean
}

export const SOCKET_BOUNDS = {
  cathodeOhms: { label: 'cathode resistor', unit: 'Ω', min: 1, max: 10_000 },
  senseOhms: { label: 'sense resistor', unit: 'Ω', min: 0.1, max: 100 },
  screenOhms: { label: 'screen resistor', unit: 'Ω', min: 1, max: 20_000 },
  halfPrimaryOhms: { label: 'half primary', unit: 'Ω', min: 1, max: 2000 },
  cathodeSharedBy: { label: 'number sharing the cathode resistor', unit: '', min: 1, max: 8, whole: true },
  halfSharedBy: { label: 'number on this half of the primary', unit: '', min: 1, max: 4, whole: true },
  across: { label: 'place across', unit: '', min: 0, max: 100 },
  depth: { label: 'place in depth', unit: '', min: 0, max: 100 },
} as const satisfies Record<string, SocketBound>

export const MOST_SOCKETS = 40
