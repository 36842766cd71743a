/**
 * The stage that stands where it was read when its tubes draw given currents.
 *
 * Reservoir and screen node are the means of what the sockets read, each with the drop on
 * its own way added: the half primary to a plate, the screen resistor to a screen.
 */

import type { Assumption } from '@/lib/domain/circuit/amp/assumption'
import type { CircuitGiven } from '@/lib/domain/circuit/amp/circuit-given'
import type { Rectifier } from '@/lib/domain/circuit/amp/rectifier-of'
import type { OutputStage, OutputTube } from '@/lib/domain/circuit/output-stage'
import type { TubeCurrents } from '@/lib/domain/circuit/solver/voltages-at'
import type { AmplifyingParameters } from '@/lib/domain/model/plate-curves'
import { ohms, ratio } from '@/lib/domain/units'
import type { BiasResistors } from './bias-resistors-of'
import type { Grids } from './grids-from-readings'
import type { Primary } from './primary-of'
import type { ReadSocket } from './read-socket'
import { type FoundFeed, screensFromReadings } from './screens-from-readings'
import { supplyFromReadings } from './supply-from-readings'

/** All of the circuit that does not hang on the currents. */
export type Frame = {
  readonly given: CircuitGiven
  readonly sockets: readonly ReadSocket[]
  readonly mainsFactor: number
  readonly primary: Primary
  readonly rectifier: Rectifier
  readonly grids: Grids
  readonly bias: BiasResistors
}

export type Assembled = { readonly stage: OutputStage; readonly assumptions: readonly Assumption[] }

const mean = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, one) => sum + one, 0) / values.length

/** Part of the screen current that runs through the half primary of its side, by the share of the winding it passes. */
function screenShareOfPrimary({ facts }: CircuitGiven): number {
  if (facts.screenFeed === 'triode-strapped') return 1
  if (facts.screenFeed !== 'ultralinear-tap') return 0
  return facts.ultralinearTapPercent === null ? 0.5 : facts.ultralinearTapPercent / 100
}

function reservoirRead({ given, sockets, primary }: Frame, currents: readonly TubeCurrents[]): number {
  const byScreen = screenShareOfPrimary(given)
  const read = sockets.flatMap(({ entry }, i) => {
    if (entry?.plateVolts == null) return []
    const through = currents.reduce(
      (sum, { plate, screen }, j) => (primary.sides[j] === primary.sides[i] ? sum + plate + byScreen * screen : sum),
      0,
    )
    return [entry.plateVolts + primary.half[primary.sides[i] ?? 'a'] * through]
  })
  const found = mean(read)
  if (found === null) throw new Error('A circuit needs plate volts of one socket at least')
  return found
}

const screenNodeRead = ({ sockets }: Frame, currents: readonly TubeCurrents[]): number | null =>
  mean(
    sockets.flatMap(({ entry, socket }, i) =>
      entry?.screenVolts == null ? [] : [entry.screenVolts + (socket.screenOhms ?? 0) * (currents[i]?.screen ?? 0)],
    ),
  )

const outputTube = (frame: Frame, i: number, one: ReadSocket, tube: AmplifyingParameters): OutputTube => ({
  socket: one.socket.position,
  tube,
  side: frame.primary.sides[i] ?? 'a',
  gridSupply: frame.grids.sockets[i]?.supply ?? null,
  gridLeak: ohms(frame.given.facts.gridLeakOhms ?? 0),
  reverseGridCurrent: frame.grids.sockets[i]?.reverseCurrent as OutputTube['reverseGridCurrent'],
  screenResistance: ohms(one.socket.screenOhms ?? 0),
  senseResistance: ohms(one.socket.senseOhms ?? 0),
  biasResistor: frame.bias.bySocket[i] ?? null,
})

/** What the screens' own node takes from the reservoir. */
function throughReservoir({ feed }: FoundFeed, plates: number, screens: number): number {
  if (feed.kind === 'own-supply') return plates
  return plates + screens + (feed.kind === 'dropper' ? feed.drawn : 0)
}

export function stageAtCurrents(
  frame: Frame,
  tubes: readonly AmplifyingParameters[],
  currents: readonly TubeCurrents[],
): Assembled {
  const { given, mainsFactor, rectifier, primary, grids, bias } = frame
  const reservoir = reservoirRead(frame, currents)
  const plates = currents.reduce((sum, { plate }) => sum + plate, 0)
  const screenCurrent = currents.reduce((sum, { screen }) => sum + screen, 0)
  const node = screenNodeRead(frame, currents)
  const hasScreens = tubes.some(({ kind }) => kind === 'pentode')
  const feed = screensFromReadings({ facts: given.facts, reservoir, node, screenCurrent, mainsFactor }, hasScreens)
  const { supply, assumptions } = supplyFromReadings({
    openVolts: given.facts.openSupplyVolts,
    sourceOhms: given.facts.sourceOhms,
    rectifier: rectifier.diode,
    mainsFactor,
    reservoir,
    current: throughReservoir(feed, plates, screenCurrent),
  })
  const stage: OutputStage = {
    tubes: frame.sockets.map((one, i) => outputTube(frame, i, one, tubes[i] as AmplifyingParameters)),
    gridSupplies: grids.supplies,
    biasResistors: bias.resistors,
    halfPrimary: primary.half,
    screenFeed: feed.feed,
    supply,
    mainsFactor: ratio(mainsFactor),
  }
  return { stage, assumptions: [...assumptions, ...feed.assumptions] }
}
