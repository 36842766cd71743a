/**
 * Quads from stocks of 100 and 200 tubes, fine readings and coarse ones: how long until proved, or
 * what the bound leaves open after a minute. The bound holds over all quads there are.
 */
import { performance } from 'node:perf_hooks'
import type { Plane } from '@/lib/domain/pairing/plane'
import { planSets } from '@/lib/planning/quads/plan-sets'
import { gapOf } from '@/lib/planning/quads/set-plan'
import type { Figure } from '@/lib/setup/bench'
import { tubesPlane } from '@/tests/domain/pairing/random-tubes'

export const name = 'quads'

const SINGLE = 100_000
/** Seconds. */
const LIMIT = 60
const READINGS = [
  ['fine', { microamps: 1, microsiemens: 1 }],
  ['as read', { microamps: 100, microsiemens: 50 }],
] as const

/** Besides the stock that is numbered as its size. */
const OTHER_STOCKS = [1, 2]

type Goals = { readonly seconds: number | null; readonly gap: number }
type Timed = { readonly seconds: number; readonly gap: number }

async function planned(plane: Plane): Promise<Timed> {
  const began = performance.now()
  const plan = await planSets(plane, { size: 4, seconds: LIMIT, now: () => performance.now() })
  return { seconds: (performance.now() - began) / 1000, gap: 100 * gapOf(plan) }
}

function figures(figure: string, { seconds, gap }: Timed, goals: Goals): readonly Figure[] {
  const common = { reference: null, better: 'lower' } as const
  return [
    { figure, value: seconds, unit: 's', goal: goals.seconds, ...common },
    { figure: `${figure}, gap`, value: gap, unit: '%', goal: goals.gap, ...common },
  ]
}

async function quads(count: number, goals: Goals): Promise<readonly Figure[]> {
  const all: Figure[] = []
  for (const [readings, coarseness] of READINGS) {
    all.push(...figures(`${count} tubes, ${readings}`, await planned(tubesPlane(count, coarseness, SINGLE)), goals))
    const others: Timed[] = []
    for (const seed of OTHER_STOCKS) others.push(await planned(tubesPlane(count, coarseness, SINGLE, seed)))
    const worst = {
      seconds: Math.max(...others.map(({ seconds }) => seconds)),
      gap: Math.max(...others.map(({ gap }) => gap)),
    }
    all.push(...figures(`${count} tubes, ${readings}, the worst of ${others.length} other stocks`, worst, goals))
  }
  return all
}

export async function run(): Promise<readonly Figure[]> {
  return [...(await quads(100, { seconds: 10, gap: 0 })), ...(await quads(200, { seconds: null, gap: 1 }))]
}
