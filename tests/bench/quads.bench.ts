/**
 * Quads from stocks of 100 and 200 tubes, fine readings and coarse ones: how long until proved, or
 * what the bound leaves open after a minute. The bound holds over all quads there are.
 */
import { performance } from 'node:perf_hooks'
import { planSets } from '@/lib/planning/quads/plan-sets'
import { gapOf } from '@/lib/planning/quads/set-plan'
import type { Figure } from '@/lib/setup/bench'
import { tubesPlane } from '@/tests/domain/pairing/random-tubes'

export const name = 'quads'

const SINGLE = 100_000
const READINGS = [
  ['fine', { microamps: 1, microsiemens: 1 }],
  ['as read', { microamps: 100, microsiemens: 50 }],
] as const

async function quads(count: number, seconds: number, goal: 'time' | 'gap'): Promise<readonly Figure[]> {
  const figures: Figure[] = []
  for (const [readings, coarseness] of READINGS) {
    const plane = tubesPlane(count, coarseness, SINGLE)
    const began = performance.now()
    const plan = await planSets(plane, { size: 4, seconds, now: () => performance.now() })
    const took = (performance.now() - began) / 1000
    const figure = `${count} tubes, ${readings}`
    const common = { reference: null, better: 'lower' } as const
    figures.push(
      { figure, value: took, unit: 's', goal: goal === 'time' ? 10 : null, ...common },
      { figure: `${figure}, gap`, value: 100 * gapOf(plan), unit: '%', goal: goal === 'time' ? 0 : 1, ...common },
    )
  }
  return figures
}

export async function run(): Promise<readonly Figure[]> {
  return [...(await quads(100, 60, 'time')), ...(await quads(200, 60, 'gap'))]
}
