/**
 * Heaters of every tube but the rectifier on the noted winding: sum of the printed currents
 * against its amperes (checks/heater-budget.ts), and volts that suit it within the 10 % of
 * an oxide cathode (common practice, no source). A tube with several ways of wiring counts
 * the one that suits; a rectifier usually has its own winding and is left out.
 */

import type { Socket } from '@/lib/domain/amp/socket'
import { heaterBudget } from '@/lib/domain/circuit/checks/heater-budget'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { amps } from '@/lib/domain/units'
import { cannotSay, type SideCheck } from './side-check'
import type { SideGiven } from './side-given'

const VOLTS_SHARE = 0.1
/** From here a winding runs warm. Common practice, no source. */
const FULL_SHARE = 0.9

type Heated = { readonly socket: Socket; readonly amperes: number | null; readonly suits: boolean | null }

function heated({ facts, shop }: SideGiven, socket: Socket): Heated {
  const heaters = findTubeType(socket.typeFitted, shop)?.heaters ?? []
  const winding = facts.heaterWindingVolts
  if (heaters.length === 0) return { socket, amperes: null, suits: null }
  const suiting = heaters.find(({ volts }) => winding !== null && Math.abs(volts.value / winding - 1) <= VOLTS_SHARE)
  if (winding === null) return { socket, amperes: heaters[0]?.amps.value ?? null, suits: null }
  return { socket, amperes: suiting?.amps.value ?? null, suits: suiting !== undefined }
}

const onWinding = (given: SideGiven): Heated[] =>
  given.sheet.sockets
    .filter(({ role, typeFitted }) => role !== 'rectifier' && typeFitted.trim() !== '')
    .map((socket) => heated(given, socket))

const positions = (list: readonly Heated[]): string[] => list.map(({ socket }) => socket.position)

function currentCheck({ facts }: SideGiven, list: readonly Heated[]): SideCheck {
  const head = { name: 'heater-current', part: '' } as const
  if (!facts.heaterWindingAmps) return cannotSay(head, 'heater winding amps')
  const known = list.filter(({ amperes }) => amperes !== null)
  if (known.length === 0) return cannotSay(head, 'heater currents')
  const { drawn, left, share } = heaterBudget(
    known.map(({ amperes }) => amps(amperes ?? 0)),
    amps(facts.heaterWindingAmps),
  )
  const unknown = positions(list.filter(({ amperes }) => amperes === null))
  const within = share > FULL_SHARE || unknown.length > 0 ? 'caution' : 'ok'
  return {
    ...head,
    value: { amount: drawn, unit: 'A' },
    limit: { amount: facts.heaterWindingAmps, unit: 'A' },
    verdict: share > 1 ? 'over' : within,
    why: { code: 'heater-sum', tubes: known.length, unknown, leftAmps: left },
  }
}

function voltsCheck({ facts }: SideGiven, list: readonly Heated[]): SideCheck {
  const head = { name: 'heater-volts', part: '' } as const
  if (facts.heaterWindingVolts === null) return cannotSay(head, 'heater winding volts')
  const odd = positions(list.filter(({ suits }) => suits === false))
  return {
    ...head,
    value: { amount: facts.heaterWindingVolts, unit: 'V' },
    limit: null,
    verdict: odd.length > 0 ? 'over' : 'ok',
    why: odd.length > 0 ? { code: 'heaters-differ', sockets: odd } : { code: 'heaters-suit' },
  }
}

export function heaterChecks(given: SideGiven): SideCheck[] {
  const list = onWinding(given)
  return list.length === 0 ? [] : [currentCheck(given, list), voltsCheck(given, list)]
}
