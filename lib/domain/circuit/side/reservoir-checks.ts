/**
 * The reservoir capacitor: how long it takes to empty and through what (checks/
 * reservoir-discharge.ts), and its ripple (checks/reservoir-ripple.ts). It is taken as
 * charged to the open-circuit volts where these are known, since that is what it stands at
 * with the tubes cold or pulled.
 */
import { reservoirDischarge } from '@/lib/domain/circuit/checks/reservoir-discharge'
import { reservoirRipple } from '@/lib/domain/circuit/checks/reservoir-ripple'
import { amps, ohms, volts } from '@/lib/domain/units'
import { cannotSay, type Missing, type SideCheck } from './side-check'
import type { SideGiven } from './side-given'

/** Counted as discharged. Common practice, no source. */
export const SAFE_VOLTS = volts(50)
/** Of the reservoir volts, peak to peak. Common practice, no source. */
const MUCH_RIPPLE = 0.1
const MICRO = 1e-6

/** Highest the reservoir is known to stand at, as the mains were. */
function chargedVolts({ facts, circuits, set, sheet }: SideGiven): number | null {
  const factor = set === null ? 1 : set.wallVolts / sheet.amp.mainsVolts
  const open = facts.openSupplyVolts === null ? [] : [facts.openSupplyVolts * factor]
  const known = [...open, ...circuits.map(({ solution }) => solution.reservoir)]
  return known.length === 0 ? null : Math.max(...known)
}

export function dischargeChecks(given: SideGiven): SideCheck[] {
  const { reservoirMicrofarads: microfarads, dischargeOhms } = given.facts
  const charged = chargedVolts(given)
  const head = { name: 'reservoir-discharge', part: '' } as const
  const missing: Missing[] = [
    ...(microfarads === null ? (['reservoir'] as const) : []),
    ...(charged === null ? (['supply volts'] as const) : []),
    ...(dischargeOhms === null ? (['discharge resistor'] as const) : []),
  ]
  if (microfarads === null || charged === null || dischargeOhms === null) return [cannotSay(head, ...missing)]
  const found = reservoirDischarge({
    capacitanceFarads: microfarads * MICRO,
    charged: volts(charged),
    resistance: ohms(dischargeOhms),
    safe: SAFE_VOLTS,
  })
  if (!found.ok) return [cannotSay(head, 'reservoir', 'discharge resistor')]
  const { time, energyJoules, peak } = found.value
  const why = {
    code: 'meter-proves',
    fromVolts: charged,
    toVolts: SAFE_VOLTS,
    ohms: dischargeOhms,
    microfarads,
  } as const
  return [
    { ...head, value: { amount: time, unit: 's' }, limit: null, verdict: 'caution', why },
    {
      name: 'reservoir-energy',
      part: '',
      value: { amount: energyJoules, unit: 'J' },
      limit: null,
      verdict: 'caution',
      why: { code: 'charge', volts: charged, microfarads },
    },
    {
      name: 'discharge-resistor',
      part: '',
      value: { amount: peak, unit: 'W' },
      limit: null,
      verdict: 'caution',
      why: { code: 'pulse-rating', volts: charged, ohms: dischargeOhms },
    },
  ]
}

/** One supply for all groups: the circuit that sees the most current, with what the rest draws as far as it is known. */
export function rippleChecks({ facts, circuits, mainsHertz }: SideGiven): SideCheck[] {
  const head = { name: 'ripple', part: '' } as const
  const [most] = [...circuits].sort((a, b) => b.solution.supplyCurrent - a.solution.supplyCurrent)
  const microfarads = facts.reservoirMicrofarads
  if (!microfarads) return [cannotSay(head, 'reservoir')]
  if (!most || most.solution.reservoir <= 0) return [cannotSay(head, 'supply current')]
  const { supplyCurrent, reservoir } = most.solution
  const { peakToPeak, share } = reservoirRipple({
    current: amps(supplyCurrent),
    capacitanceFarads: microfarads * MICRO,
    mainsHertz,
    reservoir,
  })
  return [
    {
      ...head,
      value: { amount: 100 * share, unit: '%' },
      limit: { amount: 100 * MUCH_RIPPLE, unit: '%' },
      verdict: share > MUCH_RIPPLE ? 'caution' : 'ok',
      why: { code: 'ripple-share', voltsPeakToPeak: peakToPeak, milliamps: 1000 * supplyCurrent, hertz: mainsHertz },
    },
  ]
}
