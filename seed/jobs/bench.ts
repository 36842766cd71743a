/** What is done at the bench: the sheet of the amplifier, readings, moves from state to state. */
import type { AmpSheet } from '@/lib/domain/amp/amp'
import type { Socket } from '@/lib/domain/amp/socket'
import { NO_SUPPLY_FACTS } from '@/lib/domain/amp/supply-facts'
import type { Phase } from '@/lib/domain/bench/reading-set'
import type { JobState } from '@/lib/domain/job/job-state'
import { findAmpSheet } from '@/lib/store/amp'
import { findJob } from '@/lib/store/job'
import { copyAmpSheet } from '@/lib/workflow/bench/copy-amp-sheet'
import { keepAmpSheet } from '@/lib/workflow/bench/keep-amp-sheet'
import { keepReadings } from '@/lib/workflow/bench/keep-readings'
import { keepSupply } from '@/lib/workflow/bench/keep-supply'
import { moveJobByHand } from '@/lib/workflow/counter/keep-job'
import type { Step } from '@/lib/workflow/step/step'
import type { DemoModel } from '@/seed/amps/model'
import { DEMO_MODELS } from '@/seed/amps/models'
import { type AmpKey, OWNED_AMPS, type OwnedAmp } from '@/seed/amps/owned-amps'
import { type BenchState, socketsShow } from '@/seed/bench/socket-shows'
import { settled } from '@/seed/settled'
import { DEMO_INSTRUMENTS, type InstrumentKey } from '@/seed/shop/instruments'
import { type DemoWorld, later } from '@/seed/world'
import type { Deed } from './story'

export async function sheetOf({ amps }: DemoWorld, key: AmpKey): Promise<AmpSheet> {
  const sheet = await findAmpSheet(amps.get(key) ?? '')
  if (!sheet) throw new Error(`${key} has not been to the counter`)
  return sheet
}

/** The first of its model that has a sheet already. */
async function sheetToCopy(world: DemoWorld, key: AmpKey): Promise<AmpSheet | null> {
  for (const other of world.amps.keys()) {
    if (other === key || OWNED_AMPS[other].model !== OWNED_AMPS[key].model) continue
    const sheet = await sheetOf(world, other)
    if (sheet.sockets.length > 0) return sheet
  }
  return null
}

/** Copied from another of the model where there is one, and its own half primaries written in. */
export const writeSheet: Deed = async (world, step, job) => {
  const { amp } = await sheetOf(world, job.amp)
  const from = await sheetToCopy(world, job.amp)
  if (from) {
    const copied = copyAmpSheet(step, { ampId: amp.id, version: amp.version, fromAmpId: from.amp.id })
    await settled(world.shop, `copying the sheet of ${job.amp}`, copied)
    await keepHalves(world, step, job.amp)
    return
  }
  const { outputClass, sockets } = DEMO_MODELS[OWNED_AMPS[job.amp].model]
  const sheet = {
    ampId: amp.id,
    version: amp.version,
    outputClass,
    sockets: sockets.map((socket) => ({ ...socket, id: null })),
  }
  const kept = await settled(world.shop, `the sheet of ${job.amp}`, keepAmpSheet(step, sheet))
  await keepModelSupply(world, step, job.amp, kept.version)
}

/** What the model's list tells; amplifiers of the model that come later have it copied with the sheet. */
async function keepModelSupply(world: DemoWorld, step: Step, key: AmpKey, version: number): Promise<void> {
  const { supply }: DemoModel = DEMO_MODELS[OWNED_AMPS[key].model]
  if (!supply) return
  const { amp } = await sheetOf(world, key)
  const facts = { ...NO_SUPPLY_FACTS, ...supply }
  await settled(world.shop, `the supply of ${key}`, keepSupply(later(step, 4), { ampId: amp.id, version, facts }))
}

async function keepHalves(world: DemoWorld, step: Step, key: AmpKey): Promise<void> {
  const { halves }: OwnedAmp = OWNED_AMPS[key]
  if (!halves) return
  const { amp, sockets } = await sheetOf(world, key)
  const measured = ({ side, halfPrimaryOhms }: Socket) => (side === '' ? halfPrimaryOhms : halves[side === 'A' ? 0 : 1])
  const own = sockets.map((socket) => ({ ...socket, halfPrimaryOhms: measured(socket) }))
  const sheet = { ampId: amp.id, version: amp.version, outputClass: amp.outputClass, sockets: own }
  await settled(world.shop, `the half primaries of ${key}`, keepAmpSheet(step, sheet))
}

export type Round = {
  readonly phase: Phase
  readonly wall: number
  readonly warmup?: number
  readonly meter?: Extract<InstrumentKey, 'meterA' | 'meterB'>
  readonly note?: string
  readonly state: BenchState
}

export const read =
  ({ phase, wall, warmup = 15, meter = 'meterA', note = '', state }: Round): Deed =>
  async (world, step, job) => {
    const sheet = await sheetOf(world, job.amp)
    const conditions = {
      phase,
      note,
      instrumentId: world.instruments[meter],
      wallVolts: wall,
      warmupMinutes: warmup,
      signalState: 'no signal',
      resistorTolerancePercent: 1,
      copperWarmingCelsius: 15,
    } as const
    const entries = socketsShow(sheet, state, DEMO_INSTRUMENTS[meter].displayCounts)
    const written = { jobNumber: job.number, setId: null, version: 0, conditions, entries }
    await settled(world.shop, `readings of ${job.amp}`, keepReadings(step, written))
  }

export const move =
  (to: JobState): Deed =>
  async (world, step, { number }) => {
    const job = await findJob(number)
    if (!job) throw new Error(`Job ${number} is not there`)
    await settled(world.shop, `moving job ${number}`, moveJobByHand(step, number, job.version, to))
  }
