/**
 * The stock to choose a set from, kept between requests as long as nothing was written to it.
 *
 * Why it is never old: whoever asks first hears of every write up to that moment
 * (tube-writes.ts), and the tubes concerned are read anew before the answer. What else the
 * choice depends on (the amplifier, its readings, the shop's types and zone) is read by the
 * caller at every request; the keep goes by its content, never by its name.
 *
 * Bounded: families asked about longest ago are dropped beyond so many tubes, and circuits
 * beyond so many predicted tubes.
 */
import { createHash } from 'node:crypto'
import { serialize } from 'node:v8'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import type { Carrying } from '@/lib/domain/matching/candidate'
import type { Running } from '@/lib/domain/matching/line-up'
import type { StockInOrder } from '@/lib/domain/matching/stock-in-order'
import type { CandidateView } from '@/lib/domain/stock/candidate-of'
import { type StageRead, tubePredictor } from '@/lib/domain/stock/stock-predictions'
import type { Words } from '@/lib/domain/words'
import { tubeWrites } from '../database'
import { KeptFamily } from './kept-family'
import type { TubeWrites } from './tube-writes'

export type KeepBounds = {
  /** Tubes of all families. */
  readonly tubes: number
  /** Tubes of all circuits: one that is predicted in two counts twice. */
  readonly predicted: number
}

/** About 50 MB and 65 MB. */
const BOUNDS: KeepBounds = { tubes: 250_000, predicted: 600_000 }

export type AskedStock = CandidateView & {
  readonly family: string
  /** null: compared at the test point. */
  readonly circuit: StageRead | null
  readonly words: Words
  /** Left out: readings of different instruments are not brought together. */
  readonly carrying?: Carrying
}

export type StockToChooseFrom = {
  readonly running: Running
  /** Why nothing is predicted although a circuit was given. */
  readonly fault: SolveFault | null
}

type Keep = { readonly of: TubeWrites; readonly families: Map<string, KeptFamily> }

// Kept on globalThis as the database is: the server's bundles may hold this module more than once.
const shared = globalThis as typeof globalThis & { benchglowKeptStock?: Keep }

function keep(): Keep {
  const writes = tubeWrites()
  if (shared.benchglowKeptStock?.of !== writes) shared.benchglowKeptStock = { of: writes, families: new Map() }
  return shared.benchglowKeptStock
}

export async function stockToChooseFrom(asked: AskedStock, bounds = BOUNDS): Promise<StockToChooseFrom> {
  const family = familyOf(asked.family)
  hear()
  return family.inTurn(async () => {
    await broughtUpToDate(family, asked)
    const { running, fault } = await compared(family, asked)
    dropBeyond(bounds, family)
    return { running: family.asOf(running, asked), fault }
  })
}

/** How much is kept now. */
export function keptStock(): { readonly tubes: number; readonly circuits: number; readonly predicted: number } {
  const families = [...keep().families.values()]
  const circuits = families.flatMap((family) => [...family.circuits.values()])
  const sum = (sizes: readonly { readonly size: number }[]) => sizes.reduce((total, { size }) => total + size, 0)
  return { tubes: sum(families), circuits: circuits.length, predicted: sum(circuits) }
}

function familyOf(name: string): KeptFamily {
  const { families } = keep()
  const family = families.get(name) ?? new KeptFamily(name)
  families.delete(name)
  families.set(name, family)
  return family
}

/** Every family is told of every write: a tube may have come from another one. */
function hear(): void {
  const { of, families } = keep()
  const changes = of.changes()
  for (const family of families.values()) family.note(changes)
}

/** What is written while one reads is read too, unless there is no end to it: nothing is then older than the asking. */
const ROUNDS = 5

async function broughtUpToDate(family: KeptFamily, { catalogue: { ownTypes }, timeZone }: AskedStock): Promise<void> {
  for (let round = 0; round < ROUNDS; round += 1) {
    await family.bringUpToDate({ catalogue: { ownTypes }, timeZone })
    hear()
    if (!family.isDue) return
  }
}

async function compared(
  family: KeptFamily,
  { circuit, catalogue, words, now, carrying }: AskedStock,
): Promise<StockToChooseFrom> {
  if (!circuit) return { running: family.atTestPoint(carrying), fault: null }
  const stock = family.carried(carrying, 'everywhere')
  const { stage, gridStandard } = circuit
  const key = createHash('sha256')
    .update(serialize([stage, gridStandard, words, ratesIn(stock)]))
    .digest('base64')
  if (family.circuits.has(key)) return { running: await family.predictedIn(key, null, stock), fault: null }
  const predictor = tubePredictor({ stage, gridStandard }, { catalogue: { ownTypes: catalogue.ownTypes }, now, words })
  if (!predictor.ok) return { running: family.atTestPoint(carrying), fault: predictor.fault }
  return { running: await family.predictedIn(key, predictor.value, stock), fault: null }
}

/** What every carried reading of it follows from: with the same rates a tube is predicted the same. */
function ratesIn({ kinds }: StockInOrder): Readonly<Record<string, unknown>> {
  const carried = kinds.flatMap(({ test }) => (test?.carried ? [{ ...test.carried, to: test.instrument }] : []))
  return Object.fromEntries(
    carried.map(({ from, to, current, slope }) => [JSON.stringify([from, to]), { current, slope }]),
  )
}

/** The one in use stays, however large it is; of its circuits the one asked about last. */
function dropBeyond({ tubes, predicted }: KeepBounds, inUse: KeptFamily): void {
  const { families } = keep()
  for (const [name, family] of families) {
    if (keptStock().tubes <= tubes) break
    if (family !== inUse) families.delete(name)
  }
  for (const family of families.values()) {
    for (const key of [...family.circuits.keys()].slice(0, family === inUse ? -1 : undefined)) {
      if (keptStock().predicted <= predicted) return
      family.circuits.delete(key)
    }
  }
}
