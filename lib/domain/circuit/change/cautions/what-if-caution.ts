/** What to mind before a change is made. Values carry the unit that a sentence would show. */
import type { SolutionCaution } from '@/lib/domain/circuit/idle-solution'
import type { RatingSystem } from '@/lib/domain/tube/tube-variant'

type Over<Code extends string> = {
  readonly code: Code
  readonly socket: string
  readonly value: number
  readonly limit: number
  readonly system: RatingSystem
}

export type WhatIfCaution =
  | SolutionCaution
  /** Always: a computed state is no reading. */
  | { readonly code: 'computed-not-read' }
  | {
      readonly code: 'curves-stand-in'
      readonly socket: string
      readonly designation: string
      readonly curvesOf: string
    }
  | { readonly code: 'extrapolated'; readonly socket: string }
  | { readonly code: 'cutoff-not-known'; readonly socket: string; readonly designation: string }
  /** Test records and what was read in the socket differ by more than their uncertainties. */
  | { readonly code: 'records-disagree'; readonly socket: string }
  | { readonly code: 'other-base'; readonly part: string; readonly designation: string; readonly base: string }
  | {
      readonly code: 'heater-volts-differ'
      readonly part: string
      readonly designation: string
      readonly volts: number
      readonly nowVolts: number
    }
  | {
      readonly code: 'heater-takes-more'
      readonly part: string
      readonly designation: string
      readonly amps: number
      readonly nowAmps: number
    }
  | Over<'plate-volts-over'>
  | Over<'screen-volts-over'>
  /** mA. */
  | Over<'cathode-current-over'>
  | Over<'screen-watts-over'>
  | {
      readonly code: 'reservoir-too-large'
      readonly designation: string
      readonly microfarads: number
      readonly limit: number
    }
  | { readonly code: 'reservoir-not-known'; readonly designation: string; readonly limit: number }
  | { readonly code: 'reservoir-limit-not-printed'; readonly designation: string }
  | {
      readonly code: 'rectifier-current-over'
      readonly designation: string
      readonly milliamps: number
      readonly limit: number
    }
  /** Volts on the reservoir before the output tubes draw: with silicon at once, with a filament in a few seconds. */
  | {
      readonly code: 'volts-before-warm-up'
      readonly designation: string
      readonly openVolts: number
      readonly idleVolts: number
    }
  | { readonly code: 'pulled-for-a-look'; readonly socket: string }
