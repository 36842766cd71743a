/** One side check: a figure of the stage against its limit, or what is missing for it. */

export const SIDE_CHECK_NAMES = [
  'screen-dissipation',
  'grid-leak',
  'heater-current',
  'heater-volts',
  'coupling-leakage',
  'reservoir-discharge',
  'reservoir-energy',
  'discharge-resistor',
  'ripple',
  'clipping-power',
] as const
export type SideCheckName = (typeof SIDE_CHECK_NAMES)[number]

export type SideUnit = 'W' | 'Ω' | 'A' | 'V' | 'µA' | 's' | 'J' | '%'
export type Amount = { readonly amount: number; readonly unit: SideUnit }

/** 'cannot-say': something is missing, and `why` says what. */
export type SideVerdict = 'ok' | 'caution' | 'over' | 'cannot-say'

/** What a figure needs and the sheet, the facts or the readings do not hold. */
export type Missing =
  | 'screen volts'
  | 'screen rating'
  | 'grid leak'
  | 'printed grid-leak limit'
  | 'heater winding amps'
  | 'heater winding volts'
  | 'heater currents'
  | 'grid volts'
  | 'grid supply volts'
  | 'reservoir'
  | 'discharge resistor'
  | 'supply volts'
  | 'supply current'
  | 'plate load'
  | 'idle readings'

export type SideWhy =
  | { readonly code: 'missing'; readonly what: readonly Missing[] }
  /** The band of the figure lies wholly on one side of the limit. */
  | { readonly code: 'against-limit'; readonly percent: number }
  | { readonly code: 'limit-in-band'; readonly percent: number }
  /** `remark`: what the sheet says beside its limit; '' for nothing. */
  | {
      readonly code: 'against-printed'
      readonly designation: string
      readonly remark: string
    }
  /** `unknown`: sockets whose heater current is not known, so the sum is at least that. */
  | {
      readonly code: 'heater-sum'
      readonly tubes: number
      readonly unknown: readonly string[]
      readonly leftAmps: number
    }
  | { readonly code: 'heaters-suit' }
  | { readonly code: 'heaters-differ'; readonly sockets: readonly string[] }
  | {
      readonly code: 'grid-lift'
      readonly liftVolts: number
      readonly doubtVolts: number
      readonly insulationOhms: number | null
    }
  /** A computed discharge proves nothing: a meter does. */
  | {
      readonly code: 'meter-proves'
      readonly fromVolts: number
      readonly toVolts: number
      readonly ohms: number
      readonly microfarads: number
    }
  | { readonly code: 'charge'; readonly volts: number; readonly microfarads: number }
  | { readonly code: 'pulse-rating'; readonly volts: number; readonly ohms: number }
  | {
      readonly code: 'ripple-share'
      readonly voltsPeakToPeak: number
      readonly milliamps: number
      readonly hertz: number
    }
  | {
      readonly code: 'clips'
      readonly where: 'at-zero-grid' | 'at-cutoff'
      readonly loadOhms: number
      readonly tubes: number
    }
  /** The estimate holds for screens that stay where they are. */
  | { readonly code: 'screens-move' }

export type SideCheck = {
  readonly name: SideCheckName
  /** Socket, sockets, or '' for the whole amplifier. */
  readonly part: string
  readonly value: Amount | null
  readonly limit: Amount | null
  readonly verdict: SideVerdict
  readonly why: SideWhy
}

type Head = Pick<SideCheck, 'name' | 'part'>

export const cannotSay = ({ name, part }: Head, ...what: readonly Missing[]): SideCheck => ({
  name,
  part,
  value: null,
  limit: null,
  verdict: 'cannot-say',
  why: { code: 'missing', what },
})
