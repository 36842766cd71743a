/** What a plan for one job rests on beside the tubes, as the records have it now. */
import { createHash } from 'node:crypto'
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { stockedTubesAt } from '@/lib/domain/amp/fitting'
import { sheetShown } from '@/lib/domain/amp/sheet-shown'
import { supplyShown } from '@/lib/domain/amp/supply-shown'
import type { ReadingSet } from '@/lib/domain/bench/reading-set'
import type { Job } from '@/lib/domain/job/job'
import type { Shop } from '@/lib/domain/shop/shop'
import type { PlanBasis } from '@/lib/domain/stock/plan-basis'
import { wordsFor } from '@/lib/domain/words'
import { findAmpSheet } from '@/lib/store/amp'
import { findSupply } from '@/lib/store/amp-supply'
import { listCorrections } from '@/lib/store/carrying'
import { db, type Tx } from '@/lib/store/database'
import { listFittingsOfAmp } from '@/lib/store/fitting'
import { listReadingSets } from '@/lib/store/reading-set'
import { listTubesById } from '@/lib/store/tube'

/** Taken before anything else is read for the plan: what changes in between is then noticed too. */
export async function planBasis(job: Pick<Job, 'id' | 'ampId'>, shop: Shop, tx: Tx = db()): Promise<PlanBasis> {
  const sheet = await findAmpSheet(job.ampId, tx)
  const [set] = await listReadingSets(job.id, tx)
  const { idleFixed, idleCathode, idleSingle, ownTypes } = shop
  return {
    readings: set ? `${set.id}/${set.version}` : '',
    sheet: sheet ? sheetLines(sheet) : [],
    supply: [...supplyShown(await findSupply(job.ampId, tx), wordsFor(shop.words))],
    meter: set ? digest([set.instrumentName, set.meter]) : '',
    fitted: set ? digest(await testsThere(job.ampId, set, tx)) : '',
    windows: digest([idleFixed, idleCathode, idleSingle]),
    types: digest(ownTypes),
    corrections: digest(await listCorrections(tx)),
  }
}

/** Where a socket is drawn, and the mark of what sits in it, decide nothing. */
const DECIDES_NOTHING = / (place|mark)$/

function sheetLines({ amp, sockets }: AmpSheet): [string, string][] {
  const asked = sockets.filter(({ role }) => role === 'output' || role === 'phase-inverter')
  const lines = [...sheetShown(amp.outputClass, asked)].filter(([label]) => !DECIDES_NOTHING.test(label))
  return [['Marked mains', `${amp.mainsVolts} V`], ...lines]
}

async function testsThere(ampId: string, { takenAt }: ReadingSet, tx: Tx): Promise<unknown> {
  const sat = [...stockedTubesAt(await listFittingsOfAmp(ampId, tx), takenAt)].sort()
  const tubes = await listTubesById(
    sat.map(([, tubeId]) => tubeId),
    tx,
  )
  return [sat, tubes.map(({ tube, test, shortsFoundAt }) => [tube.designation, test, shortsFoundAt])]
}

const digest = (facts: unknown): string =>
  createHash('sha256').update(JSON.stringify(facts)).digest('base64url').slice(0, 16)
