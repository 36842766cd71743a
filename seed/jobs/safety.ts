/** Signing the safety lines with what the instruments showed, and releasing. */
import { CHECK_IDS, type Check, type CheckId } from '@/lib/domain/safety/check'
import { findJob } from '@/lib/store/job'
import type { Step } from '@/lib/workflow/step/step'
import { releaseJob } from '@/lib/workflow/work/release-job'
import { safetyState } from '@/lib/workflow/work/safety-state'
import { type SignedEntry, signSafetyLine } from '@/lib/workflow/work/sign-safety-line'
import { settled } from '@/seed/settled'
import type { InstrumentKey } from '@/seed/shop/instruments'
import { type DemoWorld, later } from '@/seed/world'
import type { Deed } from './story'

/** What was found. Ohms, amps, watts, minutes. */
export type SafetyFigures = {
  readonly bondOhms: number
  readonly insulationMegohms: number
  readonly leakageMilliamps: number
  readonly powerWatts: number
  readonly load: string
  readonly soakMinutes: number
  /** What the meter showed at the end of the soak. */
  readonly soakReading: string
  readonly heard: string
  /** Why the idle line passes although its band reaches above the rating. */
  readonly idleReason?: string
  readonly cord?: string
  /** Measured, against the sheet, as a share: 1.01 is one per cent high. */
  readonly screens?: readonly number[]
}

type Found = {
  readonly value?: number
  readonly detail?: string
  readonly with?: InstrumentKey
  readonly reason?: string
}

const MEASURED: InstrumentKey = 'meterA'

/** Minutes into the sign-off at which each line is signed; the last two come after the soak. */
const MINUTE: Readonly<Record<CheckId, number>> = {
  discharge: 0,
  fuse: 3,
  cord: 5,
  'earth-bond': 9,
  insulation: 12,
  leakage: 18,
  'screen-resistors': 24,
  idle: 26,
  'full-power': 41,
  soak: 46,
  listening: 58,
}

const AFTER_SOAK: readonly CheckId[] = ['soak', 'listening']

function foundAt(check: Check, figures: SafetyFigures): Found {
  const byCheck: Readonly<Record<CheckId, Found>> = {
    discharge: { value: 2.1, detail: '40 s, again after 100 s', with: MEASURED },
    fuse: { detail: check.expected },
    cord: { detail: figures.cord ?? 'three-core, strain relief sound' },
    'earth-bond': { value: figures.bondOhms, with: 'bond' },
    insulation: { value: figures.insulationMegohms * 1e6, with: 'insulation' },
    leakage: { value: figures.leakageMilliamps / 1000, with: 'leakage' },
    'screen-resistors': { with: MEASURED },
    idle: { reason: figures.idleReason },
    'full-power': { value: figures.powerWatts, detail: figures.load, with: MEASURED },
    soak: { value: figures.soakMinutes * 60, detail: figures.soakReading, with: MEASURED },
    listening: { detail: figures.heard },
  }
  return byCheck[check.id]
}

function entryFor({ instruments }: DemoWorld, check: Check, figures: SafetyFigures): SignedEntry {
  const { value = null, detail = '', with: instrument, reason = '' } = foundAt(check, figures)
  const parts = check.source.kind === 'parts' ? check.source.parts : []
  const measured = parts.map(({ sheetOhms }, at) => Math.round(sheetOhms * (figures.screens?.[at] ?? 1)))
  const outcome = check.doesNotApply === null ? 'pass' : 'not-tested'
  return { outcome, value, detail, reason, parts: measured, instrumentId: instrument ? instruments[instrument] : '' }
}

async function sign(
  world: DemoWorld,
  step: Step,
  number: string,
  figures: SafetyFigures,
  ids: readonly CheckId[],
): Promise<void> {
  const job = await findJob(number)
  if (!job) throw new Error(`Job ${number} is not there`)
  const { lines } = await safetyState(job, world.shop)
  for (const { check, line } of lines) {
    if (!ids.includes(check.id)) continue
    const entry = entryFor(world, check, figures)
    const signing = { jobNumber: number, check: check.id, version: line?.version ?? 0, entry }
    const minutes = MINUTE[check.id] + (AFTER_SOAK.includes(check.id) ? figures.soakMinutes : 0)
    const signed = signSafetyLine(later(step, minutes), world.shop, signing)
    await settled(world.shop, `${check.name} of job ${number}`, signed)
  }
}

/** All lines, or those named. */
export const signSafety =
  (figures: SafetyFigures, ids: readonly CheckId[] = CHECK_IDS): Deed =>
  (world, step, { number }) =>
    sign(world, step, number, figures, ids)

/** One line that fails, with its reason. */
export const failSafety =
  (check: CheckId, value: number, instrument: InstrumentKey, reason: string): Deed =>
  async (world, step, { number }) => {
    const entry = {
      outcome: 'fail',
      value,
      detail: '',
      reason,
      parts: [],
      instrumentId: world.instruments[instrument],
    } as const
    const signing = signSafetyLine(step, world.shop, { jobNumber: number, check, version: 0, entry })
    await settled(world.shop, `a failing ${check} of job ${number}`, signing)
  }

export const release: Deed = async ({ shop }, step, { number }) => {
  await settled(shop, `releasing job ${number}`, releaseJob(step, shop, number))
}
