/** Where the safety sign-off of a job stands: its lines, the readings they rest on, and what has changed since. */
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { type Fitting, fittedBy, sheetAsOf, tubesChangedAt } from '@/lib/domain/amp/fitting'
import { type BenchResult, benchResult } from '@/lib/domain/bench/bench-result'
import type { Phase, ReadingSet } from '@/lib/domain/bench/reading-set'
import type { Job } from '@/lib/domain/job/job'
import type { Check } from '@/lib/domain/safety/check'
import { idleEvidence } from '@/lib/domain/safety/idle-evidence'
import { type GateContext, type GateLine, gateLines } from '@/lib/domain/safety/release-gate'
import { safetyChecks } from '@/lib/domain/safety/safety-checks'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { findAmpSheet } from '@/lib/store/amp'
import { db, type Tx } from '@/lib/store/database'
import { listFittingsOfAmp } from '@/lib/store/fitting'
import { findLatestReadings } from '@/lib/store/reading-set'
import { listSafetyLines } from '@/lib/store/safety'

/** Worked out with the tubes that sat in the sockets when it was read. */
export type WorkedRound = { readonly set: ReadingSet; readonly result: BenchResult }

export type SafetyState = {
  readonly sheet: AmpSheet
  readonly fittings: readonly Fitting[]
  readonly before: WorkedRound | null
  readonly after: WorkedRound | null
  readonly checks: readonly Check[]
  readonly context: GateContext
  readonly lines: readonly GateLine[]
}

type AmpState = { readonly sheet: AmpSheet; readonly fittings: readonly Fitting[] }

export async function ampState(job: Job, tx: Tx = db()): Promise<AmpState> {
  const sheet = await findAmpSheet(job.ampId, tx)
  if (!sheet) throw new Error(`Job ${job.number} has lost its amplifier`)
  return { sheet, fittings: await listFittingsOfAmp(job.ampId, tx) }
}

export function workedRound({ sheet, fittings }: AmpState, set: ReadingSet, shop: Shop): WorkedRound {
  return { set, result: benchResult(sheetAsOf(sheet, fittings, set.takenAt), set, shop) }
}

async function latestRound(state: AmpState, job: Job, phase: Phase, shop: Shop, tx: Tx): Promise<WorkedRound | null> {
  const set = await findLatestReadings(job.id, phase, tx)
  return set && workedRound(state, set, shop)
}

export async function safetyState(job: Job, shop: Shop, tx: Tx = db()): Promise<SafetyState> {
  const state = await ampState(job, tx)
  const before = await latestRound(state, job, 'before', shop, tx)
  const after = await latestRound(state, job, 'after', shop, tx)
  const checks = safetyChecks(state.sheet, shop, wordsFor(shop.words))
  const context = gateContext(state, job, after)
  const lines = gateLines(checks, await listSafetyLines(job.id, tx), context)
  return { ...state, before, after, checks, context, lines }
}

function gateContext({ sheet, fittings }: AmpState, job: Job, after: WorkedRound | null): GateContext {
  const since = after ? fittedBy(fittings, job.id).filter(({ fittedAt }) => fittedAt > after.set.takenAt) : []
  return {
    idle: after && idleEvidence(sheet.sockets, after),
    fittedSince: since.map(({ mark }) => mark),
    tubesChangedAt: tubesChangedAt(fittings, job.id, job.receivedAt),
  }
}
