/** What is known between the shop's testers, by the reference tubes read on both. */
import type { Carrying } from '@/lib/domain/matching/candidate'
import { type InstrumentCorrection, instrumentCorrections } from '@/lib/domain/stock/instrument-correction'
import { db, type Tx } from './database'
import { listReferenceTubes } from './tube'

export async function listCorrections(client: Tx = db()): Promise<InstrumentCorrection[]> {
  return instrumentCorrections(await listReferenceTubes(client))
}

/** `to`: the instrument all are carried to; empty: the one that most of a stock was read on. */
export async function findCarrying(to = ''): Promise<Carrying> {
  const corrections = (await listCorrections()).map(({ from, to, figure, factor, readingUncertainty }) => ({
    ...{ from, to, figure, factor, readingUncertainty },
  }))
  return to === '' ? { corrections } : { corrections, to }
}
