/** From the what-if boxes to a change of the circuit, with a sentence beside every box that cannot be read. */
import { SOLID_STATE } from '@/lib/domain/amp/supply-facts'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { Change, ProposedTube } from '@/lib/domain/circuit/change/change'
import type { WhatIfFault } from '@/lib/domain/circuit/change/changed-circuit'
import { readDecimal } from '@/lib/domain/decimal'
import type { Result } from '@/lib/domain/result'
import type { Words } from '@/lib/domain/words'
import { markBox, marksTyped, SILICON, type WhatIfTyped } from './what-if-typed'

/** What the stock book says of a mark: the tube by its records, or why it cannot be reckoned with. */
export type StockedAnswer = Result<ProposedTube, string>
/** By the mark as it was typed. */
export type StockedAnswers = Readonly<Record<string, StockedAnswer>>

export type AskedChange = {
  readonly change: Change
  /** By box. */
  readonly faults: Readonly<Record<string, string>>
  /** A mark is typed that has not been looked up yet. */
  readonly waiting: boolean
}

type Bounds = { readonly label: string; readonly unit: string; readonly min: number; readonly max: number }

const BOUNDS = {
  grid: { label: 'Grid supply', unit: 'V', min: -300, max: 0 },
  cathode: { label: 'Cathode resistor', unit: 'Ω', min: 1, max: 100_000 },
  wall: { label: 'Wall voltage', unit: 'V', min: 60, max: 280 },
} as const satisfies Record<string, Bounds>

/** Empty: undefined. */
function number(typed: string | undefined, { label, unit, min, max }: Bounds): number | undefined | string {
  const between = `between ${min} and ${max} ${unit}`.replace('-', '\u2212')
  const read = readDecimal(typed ?? '')
  if (!read.ok) {
    return read.fault === 'empty' ? undefined : `${label}: “${typed}” is not a number. Type a number ${between}.`
  }
  if (read.value < min) return `${label}: ${read.value} ${unit} is too low. It must be ${between}.`
  return read.value > max ? `${label}: ${read.value} ${unit} is too high. It must be ${between}.` : read.value
}

function gridVolts(typed: string | undefined): number | undefined | string {
  const read = readDecimal(typed ?? '')
  if (read.ok && read.value > 0) return `Grid supply: ${read.value} V is above chassis. Type it with its minus.`
  return number(typed, BOUNDS.grid)
}

type Proposals = Pick<AskedChange, 'faults' | 'waiting'> & {
  readonly bySocket: Readonly<Record<string, ProposedTube>>
}

function proposals(typed: WhatIfTyped, stocked: StockedAnswers, { tube }: Words): Proposals {
  const bySocket: Record<string, ProposedTube> = {}
  const faults: Record<string, string> = {}
  const sits = new Map<string, string>()
  let waiting = false
  for (const [position, mark] of marksTyped(typed)) {
    const found = stocked[mark]
    if (!found) waiting = true
    else if (!found.ok) faults[markBox(position)] = found.fault
    else {
      const own = found.value.kind === 'individual' ? found.value.mark : mark
      const there = sits.get(own)
      if (there) faults[markBox(position)] = `${own} is one ${tube}: it sits in ${there} already.`
      else bySocket[position] = found.value
      sits.set(own, there ?? position)
    }
  }
  return { bySocket, faults, waiting }
}

function tubesOf({ sockets }: AmpCircuit, type: string | undefined, { bySocket }: Proposals): Change['tubes'] {
  if (type === undefined) return Object.keys(bySocket).length === 0 ? undefined : { bySocket }
  const average: ProposedTube = { kind: 'type', designation: type }
  return { bySocket: Object.fromEntries(sockets.map(({ position }) => [position, bySocket[position] ?? average])) }
}

export function askedChange(
  circuit: AmpCircuit,
  typed: WhatIfTyped,
  stocked: StockedAnswers,
  words: Words,
): AskedChange {
  const proposed = proposals(typed, stocked, words)
  const faults: Record<string, string> = { ...proposed.faults }
  const read = (box: string, value: number | undefined | string): number | undefined => {
    if (typeof value !== 'string') return value
    faults[box] = value
    return undefined
  }
  const { type, rectifier, pulled } = typed
  const tubes = tubesOf(circuit, type, proposed)
  const grid = read('grid', gridVolts(typed.grid))
  const cathode = read('cathode', number(typed.cathode, BOUNDS.cathode))
  const wall = read('wall', number(typed.wall, BOUNDS.wall))
  const change: Change = {
    ...(tubes && { tubes }),
    ...(grid !== undefined && { gridVolts: grid }),
    ...(cathode !== undefined && { cathodeOhms: cathode }),
    ...(wall !== undefined && { wallVolts: wall }),
    ...(rectifier !== undefined && { rectifier: rectifier === SILICON ? SOLID_STATE : rectifier }),
    ...(pulled !== undefined && { pulled }),
  }
  return { change, faults, waiting: proposed.waiting }
}

/** Null: no one box is to blame. */
export function boxOfFault({ code }: WhatIfFault): string | null {
  switch (code) {
    case 'type-not-known':
    case 'no-curves':
    case 'not-an-output-tube':
      return 'type'
    case 'unknown-socket':
      return 'pulled'
    case 'no-grid-supply':
    case 'grid-volts-not-negative':
      return 'grid'
    case 'no-cathode-resistor':
    case 'cathode-ohms-not-positive':
      return 'cathode'
    case 'mains-out-of-range':
      return 'wall'
    case 'rectifier-not-known':
    case 'rectifier-now-not-known':
      return 'rectifier'
    case 'no-solution':
      return null
  }
}
