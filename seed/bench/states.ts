/**
 * The states in which amplifiers of the demo come to the bench and leave it,
 * with currents, supplies and grid volts that go together: more current pulls
 * the supply down, a hotter tube has less grid voltage. Screen shares are usual
 * for the type (from memory).
 */
import type { BenchState, OutputState, SmallState } from './socket-shows'

const SHARE = { '6V6GT': 0.075, '6L6GC': 0.055, EL34: 0.127, EL84: 0.1, KT88: 0.06 } as const

type Tube = Pick<OutputState, 'cathodeMilliamps' | 'gridVolts'>

/** The grid of a tube on a cathode resistor is at 0 V. */
export const tube = (cathodeMilliamps: number, gridVolts = 0): Tube => ({ cathodeMilliamps, gridVolts })

const output = (type: keyof typeof SHARE, state: Tube): OutputState => ({ ...state, screenShare: SHARE[type] })

type Small = Readonly<Record<string, SmallState>>

export const pipitState = (supply: number, only: Tube): BenchState => ({
  plateSupplyVolts: supply,
  screenSupplyVolts: supply - 24,
  plateLeadOhms: 305,
  outputs: { V2: output('6V6GT', only) },
})

export const tansyState = (supply: number, tubes: readonly [Tube, Tube], small: Small = {}): BenchState => ({
  plateSupplyVolts: supply,
  screenSupplyVolts: supply - 9,
  plateLeadOhms: 152,
  outputs: { V4: output('EL84', tubes[0]), V5: output('EL84', tubes[1]) },
  small,
})

export const foremanState = (supply: number, tubes: readonly [Tube, Tube], small: Small = {}): BenchState => ({
  plateSupplyVolts: supply,
  screenSupplyVolts: supply - 3.5,
  plateLeadOhms: 78,
  outputs: { V5: output('6L6GC', tubes[0]), V6: output('6L6GC', tubes[1]) },
  small,
})

const POSITIONS = ['V4', 'V5', 'V6', 'V7'] as const

type Four = readonly [Tube, Tube, Tube, Tube]

const four = (type: keyof typeof SHARE, tubes: Four) =>
  Object.fromEntries(POSITIONS.map((position, at) => [position, output(type, tubes[at] as Tube)]))

export const millstoneState = (supply: number, tubes: Four): BenchState => ({
  plateSupplyVolts: supply,
  screenSupplyVolts: supply - 4,
  plateLeadOhms: 19,
  outputs: four('EL34', tubes),
})

/** An open screen resistor: the socket is dead, the others carry on. */
export function withDeadSocket(state: BenchState, position: string): BenchState {
  const before = state.outputs[position]
  if (!before) throw new Error(`The demo has no socket ${position} to be dead`)
  const dead = { ...before, cathodeMilliamps: 0.3, screenShare: 0, deadScreenVolts: 4.1 }
  return { ...state, outputs: { ...state.outputs, [position]: dead } }
}

export const type240State = (supply: number, tubes: Four): BenchState => ({
  plateSupplyVolts: supply,
  screenSupplyVolts: supply - 1,
  plateLeadOhms: 61,
  outputs: four('KT88', tubes),
})

export const droverState = (supply: number, tubes: readonly [Tube, Tube], small: Small = {}): BenchState => ({
  plateSupplyVolts: supply,
  screenSupplyVolts: supply - 28,
  plateLeadOhms: 168,
  outputs: { V4: output('6V6GT', tubes[0]), V5: output('6V6GT', tubes[1]) },
  small,
})
