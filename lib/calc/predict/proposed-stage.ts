/** The output stage of an input, with tubes in its sockets. */

import type { InputFault } from '@/lib/calc/input/input-fault'
import { knownTube } from '@/lib/calc/input/known-tube'
import type { OutputStage, OutputTube, ScreenFeed, Supply } from '@/lib/domain/circuit/output-stage'
import { rectifierModel } from '@/lib/domain/model/type-model'
import { fail, ok, type Result } from '@/lib/domain/result'
import { amps, ohms, ratio, volts } from '@/lib/domain/units'
import type { InCircuit, StageInput } from './predict-input'
import type { ProposedTube } from './proposed-tube'

const milliamps = (value: number) => amps(value / 1000)
const side = (given: 'A' | 'B') => (given === 'A' ? 'a' : 'b')

const outputTube = (given: StageInput['sockets'][number], { tube }: ProposedTube): OutputTube => ({
  socket: given.socket,
  tube: tube.parameters,
  side: side(given.side),
  gridSupply: given.gridSupply ?? null,
  gridLeak: ohms(given.gridLeakOhms),
  reverseGridCurrent: amps(given.reverseGridMicroamps / 1e6),
  screenResistance: ohms(given.screenOhms),
  senseResistance: ohms(given.senseOhms),
  biasResistor: given.biasResistor ?? null,
})

function screenFeed(given: InCircuit['screenFeed']): ScreenFeed {
  switch (given.kind) {
    case 'dropper':
      return { kind: 'dropper', resistance: ohms(given.ohms), drawn: milliamps(given.drawnMilliamps) }
    case 'own-supply':
      return {
        kind: 'own-supply',
        openCircuit: volts(given.openCircuitVolts),
        sourceResistance: ohms(given.sourceOhms),
        drawn: milliamps(given.drawnMilliamps),
      }
    case 'primary-tap':
      return { kind: 'primary-tap', tap: ratio(given.tapPercent / 100) }
    case 'triode-strapped':
      return { kind: 'triode-strapped' }
  }
}

type Rectified = Result<Supply['rectifier'], readonly [InputFault]>

function rectifier(designation: string | undefined, path: string): Rectified {
  if (designation === undefined) return ok(null)
  const found = knownTube(designation, path)
  if (!found.ok) return found
  const model = rectifierModel(found.value.typeId)
  if (model.ok) return model
  const reason = found.value.role === 'rectifier' ? 'no voltage drop is known for it' : 'it is no rectifier'
  return fail([{ code: 'no-curves', path, sentence: `${path} is ${JSON.stringify(designation)}; ${reason}.` }])
}

/** `within`: the path of the stage in the input, with a point behind it. */
export function proposedStage(
  given: StageInput,
  tubes: readonly ProposedTube[],
  within = '',
): Result<OutputStage, readonly [InputFault]> {
  const found = rectifier(given.supply.rectifier, `${within}supply.rectifier`)
  if (!found.ok) return found
  const { supply, halfPrimaryOhms } = given
  return ok({
    tubes: given.sockets.flatMap((socket, index) => {
      const proposed = tubes[index]
      return proposed ? [outputTube(socket, proposed)] : []
    }),
    gridSupplies: given.gridSupplies.map(({ id, volts: voltage }) => ({ id, voltage: volts(voltage), range: null })),
    biasResistors: given.biasResistors.map(({ id, ohms: resistance }) => ({ id, resistance: ohms(resistance) })),
    halfPrimary: { a: ohms(halfPrimaryOhms.A), b: ohms(halfPrimaryOhms.B) },
    screenFeed: screenFeed(given.screenFeed),
    supply: {
      openCircuit: volts(supply.openCircuitVolts),
      sourceResistance: ohms(supply.sourceOhms),
      rectifier: found.value,
      drawn: milliamps(supply.drawnMilliamps),
    },
    mainsFactor: ratio(given.mainsPercent / 100),
  })
}
