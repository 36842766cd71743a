/**
 * What may be typed at the bench. Bounds are those of valve amplifiers: no plate
 * supply above 1200 V, no drop that a sane resistor could not give.
 */
import * as z from 'zod/mini'
import { flatRows } from '@/app/_components/form/edit-rows'
import { choice, measure, optionalChoice, requiredMeasure, rows, text, version } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import type { Socket } from '@/lib/domain/amp/socket'
import { CURRENT_METHODS, PHASES, type ReadingSet, SIGNAL_STATES } from '@/lib/domain/bench/reading-set'
import { capital, type Words } from '@/lib/domain/words'

const SWAPPED = 'Swap the probes and read again; it is typed without a sign.'

/** Boxes of one socket: key, label and bounds. Drops over a sense resistor are typed in mV, as the meter shows them. */
export const readingBoxes = (words: Words) =>
  [
    { key: 'plateVolts', label: `${capital(words.plate)} volts`, unit: 'V', min: 0, max: 1200, scale: 1 },
    { key: 'screenVolts', label: 'Screen volts', unit: 'V', min: 0, max: 1000, scale: 1 },
    { key: 'cathodeVolts', label: 'Cathode volts', unit: 'V', min: 0, max: 1200, scale: 1 },
    { key: 'gridVolts', label: 'Grid volts', unit: 'V', min: -200, max: 100, scale: 1 },
    { key: 'senseDropVolts', label: 'Sense-resistor drop', unit: 'mV', min: 0, max: 20_000, scale: 0.001 },
    { key: 'halfDropVolts', label: 'Half-primary drop', unit: 'V', min: 0, max: 100, scale: 1 },
    { key: 'screenDropVolts', label: 'Screen-resistor drop', unit: 'V', min: 0, max: 150, scale: 1 },
  ] as const

export type ReadingKey = ReturnType<typeof readingBoxes>[number]['key']

const entrySchema = (words: Words) => {
  const boxes = readingBoxes(words).map(({ key, ...rule }) => [key, measure({ ...rule, belowZero: SWAPPED })] as const)
  return z.object({
    socketId: text({ label: 'Socket', required: true }),
    method: optionalChoice('Current from', CURRENT_METHODS),
    ...(Object.fromEntries(boxes) as Record<ReadingKey, ReturnType<typeof measure>>),
  })
}

export const readingsSchema = (words: Words) =>
  z.object({
    setId: text({ label: 'Round' }),
    version: version(),
    phase: choice('Round', PHASES),
    instrumentId: text({ label: 'Meter', required: true }),
    wallVolts: requiredMeasure({ label: 'Wall voltage', unit: 'V', min: 60, max: 280 }),
    warmupMinutes: requiredMeasure({ label: 'Warm-up', unit: 'min', min: 0, max: 600 }),
    signalState: choice('Signal', SIGNAL_STATES),
    resistorTolerancePercent: requiredMeasure({ label: 'Resistor values good to ±', unit: '%', min: 0, max: 20 }),
    copperWarmingCelsius: requiredMeasure({ label: 'Copper warming', unit: '°C', min: 0, max: 100 }),
    note: text({ label: 'Note', max: 1000 }),
    entries: rows(entrySchema(words)),
  })

const shownNumber = (value: number | null | undefined, scale: number) =>
  value === null || value === undefined ? '' : String(Number((value / scale).toPrecision(8)))

export function readingsValues(
  sockets: readonly Pick<Socket, 'id'>[],
  set: ReadingSet | null,
  start: { readonly phase: string; readonly instrumentId: string; readonly wallVolts: string },
  words: Words,
): FormValues {
  const entries = new Map(set?.entries.map((entry) => [entry.socketId, entry]))
  const list = sockets.map((socket) => {
    const entry = entries.get(socket.id)
    const boxes = readingBoxes(words).map(({ key, scale }) => [key, shownNumber(entry?.[key], scale)])
    return { socketId: socket.id, method: entry?.method ?? '', ...Object.fromEntries(boxes) } as Record<string, string>
  })
  return sheetValues({
    setId: set?.id ?? '',
    version: String(set?.version ?? 0),
    phase: set?.phase ?? start.phase,
    instrumentId: set?.instrumentId ?? start.instrumentId,
    wallVolts: set ? String(set.wallVolts) : start.wallVolts,
    warmupMinutes: set ? String(set.warmupMinutes) : '',
    signalState: set?.signalState ?? 'no signal',
    resistorTolerancePercent: String(set?.resistorTolerancePercent ?? 1),
    copperWarmingCelsius: String(set?.copperWarmingCelsius ?? 15),
    note: set?.note ?? '',
    ...flatRows('entries', list),
  })
}
