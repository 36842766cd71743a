/** From the input to what the sharing is asked. Ages of tests are not looked at: every test counts as of one day. */
import type {
  Candidate,
  Carrying,
  KnownCorrection,
  MatchLimits,
  SocketDemand,
  TestPoint,
} from '@/lib/domain/matching/candidate'
import { money } from '@/lib/domain/money'
import { fail } from '@/lib/domain/result'
import { ratingsOf } from '@/lib/domain/stock/candidate-of'
import { stockType } from '@/lib/domain/stock/stock-type'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { amps, ratio, siemens, volts, watts } from '@/lib/domain/units'
import type { ShareAsk, ShareOrder } from '@/lib/planning/sharing/share-order'
import type { ShareGiven } from './share-input'

const DAY = '2000-01-01'

export const minor = (price: number) => money(Math.round(price * 100))

const maybe = <T>(value: number | undefined, unit: (value: number) => T): T | null =>
  value === undefined ? null : unit(value)

export function shareOrder({ jobs, stock, test, limits, seconds, corrections, compareOn }: ShareGiven): ShareOrder {
  return {
    jobs: jobs.map(({ job, sets }) => ({ jobNumber: job, basis: null, readOn: '', groups: sets.map(askOf) })),
    stock: stock.map((tube) => ({
      candidate: candidateOf(tube, test),
      stocked: null,
      heldFor: tube.heldFor ?? null,
    })),
    limits: { ...limitsOf(limits), carrying: carryingOf({ corrections, compareOn }) },
    view: null,
    seconds,
  }
}

export function limitsOf({ milliamps, percent, setPrice, ...rules }: ShareGiven['limits']): MatchLimits {
  return {
    ...rules,
    maximumTestAgeDays: null,
    priceCap: maybe(setPrice, minor),
    yardsticks: { plateCurrent: amps(milliamps / 1000), transconductance: ratio(percent / 100) },
    asOf: DAY,
  }
}

type WantedSet = ShareGiven['jobs'][number]['sets'][number]

export function carryingOf({ corrections, compareOn }: Pick<ShareGiven, 'corrections' | 'compareOn'>): Carrying {
  const known = corrections.flatMap(({ from, to, plateCurrent, transconductance }) => [
    knownCorrection({ from, to, figure: 'plateCurrent' }, plateCurrent),
    ...(transconductance ? [knownCorrection({ from, to, figure: 'transconductance' }, transconductance)] : []),
  ])
  return { corrections: known, ...(compareOn === undefined ? {} : { to: compareOn }) }
}

const knownCorrection = (
  between: Pick<KnownCorrection, 'from' | 'to' | 'figure'>,
  { times, percent }: { readonly times: number; readonly percent: number },
): KnownCorrection => ({ ...between, factor: times, readingUncertainty: percent / 100 })

const askOf = (set: WantedSet): ShareAsk => ({
  group: set.group,
  designation: set.type,
  sockets: [],
  circuit: fail('No circuit is given.'),
  demand: demandOf(set),
})

export function demandOf(set: WantedSet): SocketDemand {
  const { family, base } = stockType(set.type, HANDBOOK_ONLY)
  return {
    ...{ count: set.count, family, base, pushPull: set.pushPull, aim: null },
    arrangement: set.pushPull ? 'one-trim' : 'single-ended',
    plateToCathodeVoltage: maybe(set.plateToCathodeVolts, volts),
    screenVoltage: maybe(set.screenToCathodeVolts, volts),
    idlePlateDissipation: maybe(set.idleWatts, watts),
  }
}

type Place = ShareGiven['test']

const pointOf = ({ plateVolts, screenVolts, gridVolts }: Place): TestPoint => ({
  plateVoltage: volts(plateVolts),
  screenVoltage: maybe(screenVolts, volts),
  gridVoltage: volts(gridVolts),
})

export function candidateOf(tube: ShareGiven['stock'][number], usual: Place): Candidate {
  const { mark, type, milliamps, milliampsPerVolt, price, heldFor, test = usual } = tube
  const { family, base, variant } = stockType(type, HANDBOOK_ONLY)
  return {
    ...{ tubeId: mark, mark, designation: type, family, base },
    ratings: ratingsOf(variant?.ratings ?? null, variant?.ratingsStandIn ?? false),
    condition: 'used-tested',
    price: minor(price),
    state: heldFor === undefined ? { kind: 'free' } : { kind: 'reserved', holder: heldFor },
    test: {
      testedAt: DAY,
      instrument: test.instrument,
      testPoint: pointOf(test),
      plateCurrent: amps(milliamps / 1000),
      transconductance: maybe(milliampsPerVolt, (slope) => siemens(slope / 1000)),
      shorts: false,
      leakageNote: null,
    },
  }
}
