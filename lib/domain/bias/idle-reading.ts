/**
 * What is read at one socket, and the settings of the amp and bench that go
 * with it. Plain objects; all voltages DC, no signal, after warm-up.
 */
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import type { Amps, Ohms, Ratio, Volts } from '@/lib/domain/units'
import type { Meter } from './meter'

export type BiasKind = 'grid-supplied' | 'cathode-resistor'
export type Service = 'push-pull-class-ab' | 'single-ended-class-a'

/** A part with its measured or marked value. One `id` is one part: readings over it share its error. */
export type Resistor = {
  readonly id: string
  readonly resistance: Ohms
  /** Limit of error, rectangular: 0.01 is ± 1 %. Zero is allowed. */
  readonly tolerance: Ratio
}

/** The ways of finding current. `drop` is the voltage across the resistance, always positive. */
export type CurrentMethod =
  /** 1 Ω or 10 Ω in this tube's own cathode: plate + screen current. */
  | { readonly kind: 'cathode-sense'; readonly drop: Volts; readonly resistor: Resistor }
  /** Bias resistor, whole current of all the tubes that share it. */
  | { readonly kind: 'cathode-bias'; readonly drop: Volts; readonly resistor: Resistor; readonly sharedBy: number }
  /**
   * Half of the output transformer primary: plate current of all tubes on that
   * side. Not with screens on a primary tap: part of the winding then carries
   * screen current as well, and plate current reads high.
   */
  | {
      readonly kind: 'half-primary-drop'
      readonly drop: Volts
      readonly resistor: Resistor
      readonly sharedBy: number
      /** The most the copper may have warmed since its resistance was measured, °C; 0: measured hot. */
      readonly possibleWarmingCelsius: number
    }

export type ScreenCurrentSource =
  /** Typical share of the type: an assumption, flagged as one. Tubes without a screen have none. */
  | { readonly kind: 'typical-share' }
  | { readonly kind: 'screen-resistor-drop'; readonly drop: Volts; readonly resistor: Resistor }
  | { readonly kind: 'stated'; readonly current: Amps; readonly standardUncertainty: Amps }
  /** Screen strapped to plate (a pentode as a triode): all current counts as plate current. */
  | { readonly kind: 'triode-strapped' }

export type SocketReading = {
  /** "V3". */
  readonly socket: string
  readonly variant: TubeVariant
  /** To chassis. */
  readonly plateVoltage: Volts
  /** To chassis. Null: the drop of a cathode method is taken (its resistor goes to chassis). */
  readonly cathodeVoltage: Volts | null
  /** True: nobody read it, and the sheet shows no part between cathode and chassis that could raise it. */
  readonly cathodeAtChassisAssumed?: boolean
  /** To chassis. Null: not read; screen dissipation is then not given. */
  readonly screenVoltage: Volts | null
  /** To chassis, negative for grid-supplied bias. Null: not read. */
  readonly gridVoltage: Volts | null
  readonly method: CurrentMethod
  readonly screen: ScreenCurrentSource
}

/** To chassis; null only for half-primary readings whose cathode was not read. */
export function cathodeVoltageOf({ cathodeVoltage, method }: SocketReading): Volts | null {
  if (cathodeVoltage !== null) return cathodeVoltage
  return method.kind === 'half-primary-drop' ? null : method.drop
}

/** Inclusive limits as a share of the plate rating: 0.6 is 60 %. */
export type IdleWindow = { readonly low: Ratio; readonly high: Ratio }

export type IdleWindows = {
  readonly gridSuppliedPushPull: IdleWindow
  readonly cathodeResistor: IdleWindow
  readonly singleEnded: IdleWindow
}

export type IdleContext = {
  readonly bias: BiasKind
  readonly service: Service
  readonly meter: Meter
  /** DEFAULT_IDLE_WINDOWS unless the shop set its own. */
  readonly windows: IdleWindows
  /** RMS at the wall while reading; null: not read. */
  readonly wallVoltage: Volts | null
  /** What the amp is marked or set for; null: not known. */
  readonly markedMainsVoltage: Volts | null
}
