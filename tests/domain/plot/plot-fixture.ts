/** A pair of 6L6GC at 425 V and 35.2 and 38.9 mA, screens at 391 V, read to ± 0.65 % and ± 3 %. */

import type { PlotReading } from '@/lib/domain/plot/operating-point'
import { type PlateSheet, type PlateSheetInput, plateSheet } from '@/lib/domain/plot/plate-sheet'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'

const banded = (value: number, plusMinus: number) => ({
  value,
  standardUncertainty: plusMinus / 2,
  plusMinus,
  low: value - plusMinus,
  high: value + plusMinus,
  estimate: false,
})

type Given = { readonly volts?: number; readonly milliamps?: number; readonly share?: number } & Partial<PlotReading>

export function plotReading(socket: string, given: Given = {}): PlotReading {
  const { volts = 425, milliamps = 35.2, share = 0.03, ...more } = given
  return {
    when: null,
    idle: {
      socket,
      plateToCathodeVolts: banded(volts, 0.0065 * volts),
      plateAmps: banded(milliamps / 1000, (share * milliamps) / 1000),
      plateWatts: banded((volts * milliamps) / 1000, 0.5),
    },
    screenToCathode: 391,
    gridToCathode: null,
    ...more,
  }
}

export const plotInput = (given: Partial<PlateSheetInput> = {}): PlateSheetInput => ({
  typeId: '6L6',
  designation: '6L6GC',
  rating: { watts: 30, system: 'design-maximum' },
  readings: [plotReading('V4'), plotReading('V5', { milliamps: 38.9 })],
  load: null,
  catalogue: HANDBOOK_ONLY,
  ...given,
})

export function sheet(given: Partial<PlateSheetInput> = {}): PlateSheet {
  const drawn = plateSheet(plotInput(given))
  if (!drawn.ok) throw new Error(`Refused: ${drawn.fault.code}`)
  return drawn.value
}

/** Every way of drawing a sheet that the bench meets: output types, small and large currents, with and without a load. */
export const MANY: readonly (readonly [name: string, PlateSheet])[] = (
  [
    ['6L6', 425, 391, 30],
    ['EL84', 310, 300, 12],
    ['EL34', 450, 440, 25],
    ['6V6', 350, 340, 12],
    ['KT88', 560, 300, 35],
    ['2A3', 250, null, 15],
    ['300B', 350, null, 36],
  ] as const
).flatMap(([typeId, volts, screenToCathode, watts]) =>
  [0.05, 0.7, 1.1].flatMap((share) =>
    [null, 3000, 8000].map((ohms): [string, PlateSheet] => {
      const milliamps = (1000 * share * watts) / volts
      const readings = [plotReading('V4', { volts, milliamps, screenToCathode })]
      const load = ohms === null ? null : ({ ohms, arrangement: 'push-pull', tubesPerSide: 1 } as const)
      const rating = { watts, system: null }
      return [
        `${typeId} at ${100 * share} %, load ${ohms}`,
        sheet({ typeId, designation: typeId, rating, readings, load }),
      ]
    }),
  ),
)
