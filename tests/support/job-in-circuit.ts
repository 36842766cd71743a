/** A job whose amplifier was read at the bench, so that its circuit is known: an invented one on one adjustment. */
import { plainSocket } from '@/lib/domain/amp/socket'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import { findAmpSheet } from '@/lib/store/amp'
import { inTransaction } from '@/lib/store/database'
import { createJob } from '@/lib/store/job'
import { keepAmpSheet } from '@/lib/workflow/bench/keep-amp-sheet'
import { keepReadings } from '@/lib/workflow/bench/keep-readings'
import { MARKED, setOf, sheetOf, trueStage } from '@/tests/domain/circuit/amp/read-amp'
import { solved } from '@/tests/domain/circuit/solved'
import { ampOnFile, ownerOnFile } from './amps'
import { atBench, NOW } from './person-at-work'
import { done } from './quoted-job'
import { instrumentOnFile } from './tested-job'

/** So many output sockets, V1 on, a phase inverter V8 and a rectifier V9. Gives its number. */
export async function jobInCircuit(count: number, now = NOW): Promise<string> {
  const stage = stageWith(count)
  const ampId = await ampOnFile({ mainsVolts: MARKED, outputClass: 'push-pull' })
  const customerId = await ownerOnFile(`Owner of ${count}`)
  const job = await inTransaction((tx) =>
    createJob(tx, {
      ...{ fault: 'Hums', faultSettings: '', spendingLimit: null, promisedOn: null, oldPartsBack: false, items: [] },
      ...{ customerId, ampId, takenInById: 'odo', takenInBy: 'Odo', receivedAt: now },
    }),
  )
  const others = [plainSocket('V8', 'phase-inverter', '12AX7'), plainSocket('V9', 'rectifier', '5U4G')]
  const sockets = [...sheetOf(stage).sockets, ...others].map((socket) => ({ ...socket, id: null }))
  done(await keepAmpSheet(atBench('Ines', now), { ampId, version: 1, outputClass: 'push-pull', sockets }))
  const ids = new Map((await findAmpSheet(ampId))?.sockets.map(({ id, position }) => [position, id]))
  const { entries, wallVolts } = setOf(stage, solved(stage))
  const conditions = {
    ...{ phase: 'before' as const, instrumentId: await instrumentOnFile('Meter 1'), wallVolts, warmupMinutes: 15 },
    ...{ signalState: 'no signal' as const, resistorTolerancePercent: 1, copperWarmingCelsius: 0, note: '' },
  }
  const read = entries.map((entry) => ({ ...entry, socketId: ids.get(entry.socketId) ?? '' }))
  done(
    await keepReadings(atBench('Ines', now), {
      jobNumber: job.number,
      setId: null,
      version: 0,
      conditions,
      entries: read,
    }),
  )
  return job.number
}

function stageWith(count: number): OutputStage {
  const [one, other] = trueStage().tubes
  if (!one || !other) throw new Error('The stage has lost its tubes')
  const tubes = Array.from({ length: count }, (_, at) => ({ ...(at % 2 === 0 ? one : other), socket: `V${at + 1}` }))
  return trueStage({ tubes })
}
