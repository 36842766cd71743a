/** What a proposed tube asks of its socket, and where the curves or the ratings are strained. */
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { socketIdle } from '@/lib/domain/circuit/change/socket-idle'
import type { SolvedSeat } from '@/lib/domain/circuit/change/solved-circuit'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import type { WhatIfCaution } from './what-if-caution'

/** Heaters are specified to ± 10 %; a type whose volts differ by more is another heater. Common practice, no source. */
const HEATER_SHARE = 0.1
/** A twentieth more is within the spread of one type. Common practice, no source. */
const MORE_CURRENT = 1.05

function curveCautions({ seat, doubt }: SolvedSeat): WhatIfCaution[] {
  const socket = seat.socket.position
  const { type, agreement } = seat.tube
  const designation = seat.variant.asked
  const found: WhatIfCaution[] = []
  if (type.standIn === 'similar') found.push({ code: 'curves-stand-in', socket, designation, curvesOf: type.curvesOf })
  if (doubt.predicted.extrapolated) found.push({ code: 'extrapolated', socket })
  if (!type.cutoffKnown) found.push({ code: 'cutoff-not-known', socket, designation })
  // Three standard deviations above the mean of a chi-square variable of that many degrees.
  if (agreement && agreement.chiSquare > agreement.spare + 3 * Math.sqrt(2 * agreement.spare)) {
    found.push({ code: 'records-disagree', socket })
  }
  return found
}

function ratingCautions(solved: SolvedSeat, circuit: AmpCircuit): WhatIfCaution[] {
  const { ratings } = solved.seat.variant
  if (!ratings) return []
  const { system } = ratings
  const idle = socketIdle(solved, circuit)
  const socket = idle.position
  const pairs = [
    ['plate-volts-over', idle.plateToCathodeVolts.value, ratings.plateVolts?.value],
    ['screen-volts-over', idle.screenToCathodeVolts?.value, ratings.screenVolts?.value],
    ['cathode-current-over', 1000 * idle.cathodeAmps.value, ratings.cathodeMilliamps?.value],
    ['screen-watts-over', idle.screenWatts?.value, ratings.screenWatts?.value],
  ] as const
  return pairs.flatMap(([code, value, limit]) =>
    value !== undefined && limit !== undefined && value > limit ? [{ code, socket, value, limit, system }] : [],
  )
}

/** Of the first way of wiring whose volts come nearest. */
export function heaterCautions(part: string, proposed: TubeVariant, now: TubeVariant | null): WhatIfCaution[] {
  const nowHeater = now?.heaters[0]
  const designation = proposed.asked
  if (!nowHeater || proposed.heaters.length === 0) return []
  const nowVolts = nowHeater.volts.value
  const off = (value: number) => Math.abs(value / nowVolts - 1)
  const [nearest] = [...proposed.heaters].sort((a, b) => off(a.volts.value) - off(b.volts.value))
  if (!nearest) return []
  if (off(nearest.volts.value) > HEATER_SHARE) {
    return [{ code: 'heater-volts-differ', part, designation, volts: nearest.volts.value, nowVolts }]
  }
  const [amps, nowAmps] = [nearest.amps.value, nowHeater.amps.value]
  return amps > MORE_CURRENT * nowAmps ? [{ code: 'heater-takes-more', part, designation, amps, nowAmps }] : []
}

/** What a socket's wiring sees: "h + k" and "f" are an end of the heater, "k + g3" a cathode. Remarks in brackets are left out. */
const electrode = (text: string | undefined): string =>
  (text ?? '')
    .replace(/\s*\(.*\)/, '')
    .replace(/^[fh]( \+ k)?$/, 'heater')
    .replace(/^k \+ .*$/, 'k')

const isUnused = (name: string): boolean => name === '' || /^(nc|ic|no pin|shell|base sleeve)/i.test(name)

/** The socket is wired for the tube it was made for: a pin the other needs and this one does not is not wired. */
function otherElectrode(proposed: TubeVariant, now: TubeVariant): boolean {
  const [needed, wired] = [proposed.base.pins, now.base.pins]
  if (proposed.base.name !== now.base.name) return true
  if (needed === null || wired === null) return false
  return Object.entries(needed).some(([pin, text]) => {
    const name = electrode(text)
    return !isUnused(name) && name !== electrode(wired[Number(pin)])
  })
}

/** Same base and, as far as both are known, the same electrodes on its pins. */
export function baseCautions(part: string, proposed: TubeVariant, now: TubeVariant | null): WhatIfCaution[] {
  if (!now || proposed.typeId === now.typeId || !otherElectrode(proposed, now)) return []
  return [
    {
      code: 'other-base',
      part,
      designation: proposed.asked,
      base: `${proposed.base.name} ${proposed.base.eia}`.trim(),
    },
  ]
}

export function tubeCautions(solved: SolvedSeat, circuit: AmpCircuit): WhatIfCaution[] {
  const { seat } = solved
  const { position, variant: now } = seat.socket
  const changed = seat.isFitted
    ? []
    : [...baseCautions(position, seat.variant, now), ...heaterCautions(position, seat.variant, now)]
  return [...changed, ...ratingCautions(solved, circuit), ...curveCautions(solved)]
}
