/**
 * Monte Carlo after JCGM 101:2008: a true amplifier is drawn, its readings are spoiled within
 * the limits that the meter, the parts and the assumptions are allowed, and each band is
 * asked whether it holds the truth. The draws know nothing of the propagation they test.
 */
import type { IdleResult } from '@/lib/domain/bias/idle'
import { COPPER_PER_CELSIUS, EQUAL_SPLIT_HALF_WIDTH } from '@/lib/domain/bias/idle-currents'
import type { ScreenCurrentSource, SocketReading } from '@/lib/domain/bias/idle-reading'
import { type Meter, resolutionAt } from '@/lib/domain/bias/meter'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import { amps, volts } from '@/lib/domain/units'
import { dice } from '@/tests/domain/circuit/random-stage'
import { benchMeter, idle, resistor, variant } from '../../domain/bias/reading-fixture'

export type Draw = { readonly limits: (halfWidth: number) => number; readonly normal: (sigma: number) => number }

export function drawing(seed: number): Draw {
  const next = dice(seed)
  return {
    limits: (halfWidth) => halfWidth * (2 * next() - 1),
    normal: (sigma) => sigma * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  }
}

type Method =
  | { readonly kind: 'cathode-sense'; readonly ohms: number }
  | { readonly kind: 'cathode-bias'; readonly ohms: number; readonly sharedBy: number }
  | { readonly kind: 'half-primary-drop'; readonly ohms: number; readonly sharedBy: number; readonly celsius: number }

export type CoverageCase = {
  readonly name: string
  readonly designation: string
  readonly plateVolts: number
  /** Amperes of the one tube. Screen current is not used where the typical share stands for it. */
  readonly plateAmps: number
  readonly screenAmps: number
  readonly method: Method
  readonly tolerance: number
  readonly screen: 'stated' | 'measured' | 'typical-share' | 'triode-strapped'
  readonly meter?: Meter
  readonly seed: number
}

const coarseMeter: Meter = { ...benchMeter, percentOfReading: 1, counts: 3, displayCounts: 2000 }
const common = { designation: 'EL34', plateVolts: 425, plateAmps: 0.0331, screenAmps: 0.0021 } as const
const sense: Method = { kind: 'cathode-sense', ohms: 1 }

export const COVERAGE_CASES: readonly CoverageCase[] = [
  {
    ...common,
    name: 'sense resistor, screen current stated',
    method: sense,
    tolerance: 0.01,
    screen: 'stated',
    seed: 1,
  },
  { ...common, name: 'sense resistor, screen drop', method: sense, tolerance: 0.01, screen: 'measured', seed: 2 },
  {
    ...common,
    name: 'sense resistor, screen share assumed',
    method: sense,
    tolerance: 0.01,
    screen: 'typical-share',
    seed: 3,
  },
  {
    ...common,
    name: 'sense resistor of 10 %, screen share assumed, coarse meter',
    method: { kind: 'cathode-sense', ohms: 10 },
    tolerance: 0.1,
    screen: 'typical-share',
    meter: coarseMeter,
    seed: 4,
  },
  {
    ...common,
    name: 'sense resistor, screen on the plate',
    method: sense,
    tolerance: 0.01,
    screen: 'triode-strapped',
    seed: 5,
  },
  {
    ...common,
    name: 'cathode resistor of one tube, screen drop',
    method: { kind: 'cathode-bias', ohms: 470, sharedBy: 1 },
    tolerance: 0.05,
    screen: 'measured',
    seed: 6,
  },
  {
    ...common,
    name: 'cathode resistor of two tubes, screen share assumed',
    designation: 'EL84',
    plateVolts: 320,
    method: { kind: 'cathode-bias', ohms: 130, sharedBy: 2 },
    tolerance: 0.05,
    screen: 'typical-share',
    seed: 7,
  },
  {
    ...common,
    name: 'half primary measured hot, screen drop',
    method: { kind: 'half-primary-drop', ohms: 74, sharedBy: 1, celsius: 0 },
    tolerance: 0.005,
    screen: 'measured',
    seed: 8,
  },
  {
    ...common,
    name: 'half primary measured cold, screen share assumed',
    method: { kind: 'half-primary-drop', ohms: 74, sharedBy: 1, celsius: 15 },
    tolerance: 0.005,
    screen: 'typical-share',
    seed: 9,
  },
  {
    ...common,
    name: 'half primary of two tubes measured cold, screen current stated',
    method: { kind: 'half-primary-drop', ohms: 41, sharedBy: 2, celsius: 15 },
    tolerance: 0.005,
    screen: 'stated',
    seed: 10,
  },
]

/** Looking a designation up takes longer than a reading. */
const variants = new Map<string, TubeVariant>()

function variantOf({ designation }: CoverageCase): TubeVariant {
  const known = variants.get(designation) ?? variant(designation)
  variants.set(designation, known)
  return known
}

type Quantity = 'plateAmps' | 'screenAmps' | 'cathodeAmps' | 'plateToCathodeVolts' | 'plateWatts' | 'screenWatts'
type Truth = Readonly<Record<Quantity, number>>
type Drawn = { readonly truth: Truth; readonly found: IdleResult }

const STATED_SHARE = 0.15
const SCREEN_OHMS = 1000
const SCREEN_TOLERANCE = 0.05

/** True amperes of the tube: an assumed share is drawn about the typical one, from the current that is read. */
function trueCurrents(given: CoverageCase, { limits }: Draw) {
  const { designation, plateAmps, screenAmps, screen, method } = given
  if (screen === 'triode-strapped') return { plate: plateAmps, screen: 0, cathode: plateAmps }
  if (screen !== 'typical-share') return { plate: plateAmps, screen: screenAmps, cathode: plateAmps + screenAmps }
  const typical = variantOf(given).typicalScreenShare
  if (!typical) throw new Error(`${designation} has no screen`)
  const share = typical.share + limits(typical.halfWidth)
  if (method.kind === 'half-primary-drop') {
    const cathode = plateAmps / (1 - share)
    return { plate: plateAmps, screen: cathode * share, cathode }
  }
  const cathode = plateAmps + screenAmps
  return { plate: cathode * (1 - share), screen: cathode * share, cathode }
}

type Bench = { readonly draw: Draw; readonly meter: Meter; readonly gain: number }

/** What the meter shows of a true voltage. */
const shown = ({ draw, meter, gain }: Bench, truth: number) =>
  volts(truth * gain + draw.limits(meter.counts * resolutionAt(meter, volts(truth))))

/** Drop over the part, from the current of all its tubes: the tube at hand has its share of it, unequally. */
function trueDrop({ method, tolerance }: CoverageCase, { limits }: Draw, own: number) {
  const sharedBy = method.kind === 'cathode-sense' ? 1 : method.sharedBy
  const unequal = sharedBy === 1 ? 0 : limits(EQUAL_SPLIT_HALF_WIDTH)
  const warmed = method.kind === 'half-primary-drop' ? (method.celsius / 2) * (1 + limits(1)) : 0
  const ohms = method.ohms * (1 + limits(tolerance)) * (1 + COPPER_PER_CELSIUS * warmed)
  return ((sharedBy * own) / (1 + unequal)) * ohms
}

function screenSource({ screen }: CoverageCase, bench: Bench, current: number): ScreenCurrentSource {
  if (screen === 'typical-share' || screen === 'triode-strapped') return { kind: screen }
  if (screen === 'stated') {
    const standardUncertainty = amps(STATED_SHARE * current)
    return { kind: 'stated', current: amps(current + bench.draw.normal(standardUncertainty)), standardUncertainty }
  }
  const drop = shown(bench, current * SCREEN_OHMS * (1 + bench.draw.limits(SCREEN_TOLERANCE)))
  return { kind: 'screen-resistor-drop', drop, resistor: resistor(SCREEN_OHMS, SCREEN_TOLERANCE, 'V3 screen') }
}

function methodOf({ method, tolerance }: CoverageCase, drop: SocketReading['plateVoltage']): SocketReading['method'] {
  const part = resistor(method.ohms, tolerance)
  if (method.kind === 'cathode-sense') return { kind: method.kind, drop, resistor: part }
  const { sharedBy } = method
  if (method.kind === 'cathode-bias') return { kind: method.kind, drop, resistor: part, sharedBy }
  return { kind: method.kind, drop, resistor: part, sharedBy, possibleWarmingCelsius: method.celsius }
}

export function drawnIdle(given: CoverageCase, draw: Draw): Drawn {
  const { meter = benchMeter, method, plateVolts } = given
  const bench: Bench = { draw, meter, gain: 1 + draw.limits(meter.percentOfReading / 100) }
  const currents = trueCurrents(given, draw)
  const byPlate = method.kind === 'half-primary-drop'
  const drop = trueDrop(given, draw, byPlate ? currents.plate : currents.cathode)
  const cathodeVolts = byPlate ? 0 : drop
  const screenVolts = plateVolts - 2
  const found = idle(
    {
      variant: variantOf(given),
      plateVoltage: shown(bench, plateVolts),
      screenVoltage: shown(bench, screenVolts),
      cathodeVoltage: byPlate ? volts(0) : null,
      method: methodOf(given, shown(bench, drop)),
      screen: screenSource(given, bench, currents.screen),
    },
    { meter, bias: method.kind === 'cathode-bias' ? 'cathode-resistor' : 'grid-supplied' },
  )
  const truth = {
    plateAmps: currents.plate,
    screenAmps: currents.screen,
    cathodeAmps: currents.cathode,
    plateToCathodeVolts: plateVolts - cathodeVolts,
    plateWatts: (plateVolts - cathodeVolts) * currents.plate,
    screenWatts: (screenVolts - cathodeVolts) * currents.screen,
  }
  return { truth, found }
}

export type Coverage = { readonly quantity: Quantity; readonly percent: number }

const QUANTITIES = [
  'plateAmps',
  'screenAmps',
  'cathodeAmps',
  'plateToCathodeVolts',
  'plateWatts',
  'screenWatts',
] as const

/** Per cent of the draws whose band holds the truth, of every quantity that is known other than exactly. */
export function coverageOf(given: CoverageCase, draws: number): readonly Coverage[] {
  const draw = drawing(given.seed)
  const held = new Map<Quantity, number>()
  for (let n = 0; n < draws; n++) {
    const { truth, found } = drawnIdle(given, draw)
    for (const quantity of QUANTITIES) {
      const band = found[quantity]
      if (!band || band.plusMinus === 0) continue
      const holds = band.low <= truth[quantity] && truth[quantity] <= band.high
      held.set(quantity, (held.get(quantity) ?? 0) + (holds ? 1 : 0))
    }
  }
  return [...held].map(([quantity, count]) => ({ quantity, percent: (100 * count) / draws }))
}
