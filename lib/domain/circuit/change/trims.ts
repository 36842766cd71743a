/**
 * What every adjustment of the group must be set to for its hottest tube to reach the
 * middle of its idle window, with the change made: grid volts, or the cathode resistor
 * with what the nearest values of the E24 series give.
 *
 * Tubes of one adjustment with different ratings are held to the lowest.
 */
import { idleWindow } from '@/lib/domain/bias/idle-verdict'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import {
  type GridTrim,
  type ResistorTrim,
  type TrimFault,
  type TrimTarget,
  trimBiasResistor,
  trimGridSupply,
} from '@/lib/domain/circuit/what-if/trim-for-target'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { Change } from './change'
import { type ChangedCircuit, changedCircuit, type SeatedTube, type WhatIfFault } from './changed-circuit'

type Common = {
  /** Positions of the sockets that hang on it. */
  readonly sockets: readonly string[]
  readonly targetPercent: number
  /** Of each tube, plate (strapped: plate and screen). */
  readonly targetWatts: number
}

export type NoRating = { readonly code: 'no-rating'; readonly sockets: readonly string[] }

export type Trim =
  | (Common & {
      readonly kind: 'grid'
      readonly supply: string
      readonly nowVolts: number
      /** Volts at marked mains; times the mains factor they are what a meter shows. */
      readonly result: Result<GridTrim, TrimFault | NoRating>
      readonly mainsFactor: number
    })
  | (Common & {
      readonly kind: 'resistor'
      readonly resistor: string
      readonly nowOhms: number
      readonly result: Result<ResistorTrim, TrimFault | NoRating>
    })

type Aim = Common & { readonly target: Result<TrimTarget, NoRating> }

function aimFor({ service, windows, stage }: AmpCircuit, seats: readonly SeatedTube[]): Aim {
  const bias = seats[0]?.socket.bias ?? 'grid-supplied'
  const window = idleWindow({ bias, service, windows })
  const share = (window.low + window.high) / 2
  const sockets = seats.map(({ socket }) => socket.position)
  const ratings = seats.flatMap(({ variant }) => variant.ratings?.plateWatts?.value ?? [])
  const targetWatts = ratings.length === 0 ? 0 : share * Math.min(...ratings)
  const quantity = stage.screenFeed.kind === 'triode-strapped' ? 'tube-dissipation' : 'plate-dissipation'
  const complete = ratings.length === seats.length && ratings.length > 0
  return {
    sockets,
    targetPercent: 100 * share,
    targetWatts,
    target: complete ? ok({ quantity, value: targetWatts, of: 'hottest' }) : fail({ code: 'no-rating', sockets }),
  }
}

const hungOn = ({ stage, seats }: ChangedCircuit, part: string, key: 'gridSupply' | 'biasResistor'): SeatedTube[] =>
  seats.filter((_, i) => stage.tubes[i]?.[key] === part)

function gridTrims(circuit: AmpCircuit, changed: ChangedCircuit): Trim[] {
  const { stage } = changed
  return stage.gridSupplies.flatMap(({ id, voltage }): Trim[] => {
    const hung = hungOn(changed, id, 'gridSupply')
    if (hung.length === 0) return []
    const { target, ...common } = aimFor(circuit, hung)
    const result = target.ok ? trimGridSupply(stage, id, target.value) : target
    return [{ kind: 'grid', supply: id, nowVolts: voltage, mainsFactor: stage.mainsFactor, ...common, result }]
  })
}

/** A cathode resistor beside a grid supply is no adjustment: the grid volts are. */
function resistorTrims(circuit: AmpCircuit, changed: ChangedCircuit): Trim[] {
  const { stage } = changed
  return stage.biasResistors.flatMap(({ id, resistance }): Trim[] => {
    const hung = hungOn(changed, id, 'biasResistor')
    if (hung.length === 0 || hung.every(({ socket }) => socket.bias === 'grid-supplied')) return []
    const { target, ...common } = aimFor(circuit, hung)
    const result = target.ok ? trimBiasResistor(stage, id, target.value) : target
    return [{ kind: 'resistor', resistor: id, nowOhms: resistance, ...common, result }]
  })
}

export function trimsFor(circuit: AmpCircuit, change: Change): Result<readonly Trim[], WhatIfFault> {
  const changed = changedCircuit(circuit, change)
  if (!changed.ok) return changed
  return ok([...gridTrims(circuit, changed.value), ...resistorTrims(circuit, changed.value)])
}
