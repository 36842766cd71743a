/** One round of readings at the bench: who, when, with what, under which conditions. All voltages DC in V. */
import type { Meter } from '@/lib/domain/bias/meter'

export const PHASES = ['before', 'after'] as const
/** Before the work, or after it. */
export type Phase = (typeof PHASES)[number]

export const SIGNAL_STATES = ['no signal', 'input shorted', 'signal applied'] as const
export type SignalState = (typeof SIGNAL_STATES)[number]

export const CURRENT_METHODS = ['cathode-sense', 'half-primary-drop', 'cathode-bias'] as const
/** Empty: volts only, no current was read here. */
export type ReadingMethod = (typeof CURRENT_METHODS)[number] | ''

/** What the meter showed at one socket. Null: not read; never zero for that. */
export type SocketEntry = {
  readonly socketId: string
  readonly method: ReadingMethod
  /** The first four to chassis. */
  readonly plateVolts: number | null
  readonly cathodeVolts: number | null
  readonly screenVolts: number | null
  readonly gridVolts: number | null
  /** Drops, always positive. */
  readonly senseDropVolts: number | null
  readonly halfDropVolts: number | null
  readonly screenDropVolts: number | null
}

export type ReadingConditions = {
  readonly phase: Phase
  readonly instrumentId: string
  readonly wallVolts: number
  readonly warmupMinutes: number
  readonly signalState: SignalState
  readonly resistorTolerancePercent: number
  readonly copperWarmingCelsius: number
  readonly note: string
}

export type ReadingSet = ReadingConditions & {
  readonly id: string
  readonly jobId: string
  readonly takenAt: Date
  readonly takenBy: string
  readonly instrumentName: string
  readonly calibratedOn: string | null
  readonly meter: Meter
  readonly entries: readonly SocketEntry[]
  readonly version: number
}

export function methodWord(method: ReadingMethod): string {
  switch (method) {
    case 'cathode-sense':
      return 'sense resistor in the cathode'
    case 'half-primary-drop':
      return 'drop over the half primary'
    case 'cathode-bias':
      return 'cathode resistor'
    case '':
      return 'volts only'
  }
}

export const isBlank = (entry: SocketEntry): boolean =>
  [
    entry.plateVolts,
    entry.cathodeVolts,
    entry.screenVolts,
    entry.gridVolts,
    entry.senseDropVolts,
    entry.halfDropVolts,
    entry.screenDropVolts,
  ].every((value) => value === null)
