/**
 * Grid leak against the printed limit for the kind of bias (checks/grid-leak-limit.ts), and
 * what leaks into the grid from how far it stands off its supply (checks/coupling-leakage.ts).
 */

import type { Socket } from '@/lib/domain/amp/socket'
import { meterReading } from '@/lib/domain/bias/meter'
import { standardUncertainty } from '@/lib/domain/bias/uncertain'
import { couplingLeakage } from '@/lib/domain/circuit/checks/coupling-leakage'
import { type GridLeakLimits, gridLeakCheck } from '@/lib/domain/circuit/checks/grid-leak-limit'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { Ratings, SourcedNumber } from '@/lib/domain/tube/tube-variant'
import { type Ohms, ohms, volts } from '@/lib/domain/units'
import { cannotSay, type SideCheck } from './side-check'
import type { SideGiven } from './side-given'

const MEGOHM = 1e6
/** More than this shifts an output stage noticeably. Common practice, no source. */
const MUCH_LIFT_VOLTS = 1

type Supplied = 'grid-supplied' | 'cathode-resistor'

const outputs = ({ sheet }: SideGiven): readonly Socket[] => sheet.sockets.filter(({ role }) => role === 'output')

/** A limit printed for either kind holds for both. */
function printed({ all }: Ratings, bias: Supplied): SourcedNumber | null {
  const own = bias === 'grid-supplied' ? all.gridLeakGridSuppliedMegohms : all.gridLeakCathodeBiasMegohms
  return own ?? all.gridLeakMegohms ?? null
}

function leakCheck(given: SideGiven, socket: Socket): SideCheck {
  const head = { name: 'grid-leak', part: socket.position } as const
  const leak = given.facts.gridLeakOhms
  if (leak === null) return cannotSay(head, 'grid leak')
  const variant = findTubeType(socket.typeFitted, given.shop)
  const bias = socket.biasKind === '' ? null : socket.biasKind
  const figure = variant?.ratings && bias ? printed(variant.ratings, bias) : null
  if (!variant || !figure || !bias) return cannotSay(head, 'printed grid-leak limit')
  const megohms = (one: boolean): Ohms | null => (one ? ohms(figure.value * MEGOHM) : null)
  const limits: GridLeakLimits = {
    gridSupplied: megohms(bias === 'grid-supplied'),
    cathodeResistor: megohms(bias === 'cathode-resistor'),
  }
  const key = bias === 'grid-supplied' ? 'gridSupplied' : 'cathodeResistor'
  const { limit, above } = gridLeakCheck(ohms(leak), 1, key, limits)
  return {
    ...head,
    value: { amount: leak, unit: 'Ω' },
    limit: limit === null ? null : { amount: limit, unit: 'Ω' },
    // Many amplifiers are built above the printed value and live (common practice): a caution, no more.
    verdict: above ? 'caution' : 'ok',
    why: { code: 'against-printed', designation: variant.designation, remark: figure.note ?? '' },
  }
}

export const gridLeakChecks = (given: SideGiven): SideCheck[] => outputs(given).map((one) => leakCheck(given, one))

/** At the far end of the leak, as the mains stood: null where nobody read it. */
function supplyVolts({ facts, set, sheet }: SideGiven, { biasKind }: Socket): number | null {
  if (biasKind === 'cathode-resistor') return 0
  if (facts.gridSupplyVolts === null || set === null) return null
  return (-Math.abs(facts.gridSupplyVolts) * set.wallVolts) / sheet.amp.mainsVolts
}

/** Of the stage before: read at the phase inverter or driver. */
function driverPlate({ sheet, set }: SideGiven): number | null {
  const before = sheet.sockets.filter(({ role }) => role === 'phase-inverter' || role === 'driver')
  const read = before.flatMap(({ id }) => set?.entries.find(({ socketId }) => socketId === id)?.plateVolts ?? [])
  return read.length === 0 ? null : Math.max(...read)
}

function leakageCheck(given: SideGiven, socket: Socket): SideCheck {
  const head = { name: 'coupling-leakage', part: socket.position } as const
  const { facts, set } = given
  const read = set?.entries.find(({ socketId }) => socketId === socket.id)?.gridVolts ?? null
  if (set === null || read === null) return cannotSay(head, 'grid volts')
  if (!facts.gridLeakOhms) return cannotSay(head, 'grid leak')
  const supply = supplyVolts(given, socket)
  if (supply === null) return cannotSay(head, 'grid supply volts')
  const unloaded = read * (1 + facts.gridLeakOhms / set.meter.inputResistance)
  const lift = unloaded - supply
  const doubt = 2 * standardUncertainty(meterReading(set.meter, volts(unloaded), 'grid volts'))
  const plate = driverPlate(given)
  const { current, insulation } = couplingLeakage({
    grid: volts(unloaded),
    gridSupply: volts(supply),
    gridLeak: ohms(facts.gridLeakOhms),
    driverPlate: volts(plate ?? 0),
  })
  return {
    ...head,
    value: { amount: 1e6 * current, unit: 'µA' },
    limit: { amount: (1e6 * MUCH_LIFT_VOLTS) / facts.gridLeakOhms, unit: 'µA' },
    verdict: lift <= doubt ? 'ok' : lift > MUCH_LIFT_VOLTS ? 'over' : 'caution',
    why: {
      code: 'grid-lift',
      liftVolts: lift,
      doubtVolts: doubt,
      insulationOhms: plate !== null && lift > doubt ? insulation : null,
    },
  }
}

export const couplingChecks = (given: SideGiven): SideCheck[] => outputs(given).map((one) => leakageCheck(given, one))
