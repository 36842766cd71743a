/**
 * The best set against HiGHS, a mixed-integer solver that knows nothing of boxes or sweeps.
 *
 *   z_i           tube i is in the set                        Σ z = count, Σ price·z ≤ cap
 *   u_ij          lowest x is tube i's, highest tube j's       Σ u = 1, cost x spread of i and j
 *   w_ij          the same for y                              Σ w = 1, cost y spread of i and j
 *   z_i ≤ Σ u_kl  over k at or below i and l at or above i     likewise w
 *
 * All spreads are the whole points of judge(), so both sides mean the same objective.
 */
import loadHighs, { type Highs } from 'highs'
import { beforeAll, describe, expect, it } from 'vitest'
import { bestSet, type SetQuery } from '@/lib/domain/matching/search/best-set'
import { type SetPoints, setIndex } from '@/lib/domain/matching/search/set-index'
import { judge } from '@/tests/domain/matching/search/every-set'
import { randomPoints } from '@/tests/domain/matching/search/random-points'
import { generator } from '@/tests/domain/matching/tubes'

let highs: Highs
beforeAll(async () => {
  highs = await loadHighs()
})

/** Spread of two tubes in one of the figures, the other held equal. */
function pairPoints(points: SetPoints, query: SetQuery, figure: 'x' | 'y', i: number, j: number): number {
  const [a, b] = [points[figure][i] as number, points[figure][j] as number]
  const two =
    figure === 'x'
      ? { x: Int32Array.of(a, b), y: Int32Array.of(1, 1) }
      : { x: Int32Array.of(0, 0), y: Int32Array.of(a, b) }
  const bare = { ...two, cost: Int32Array.of(0, 0), price: Int32Array.of(0, 0) }
  return Number(judge(bare, [0, 1], { count: 2, scale: query.scale })?.objective)
}

type Program = { readonly objective: string[]; readonly rows: string[]; readonly names: string[] }

/** Pairs (i, j) with value i at or below value j. */
function addSpread(program: Program, points: SetPoints, query: SetQuery, figure: 'x' | 'y'): void {
  const size = points.x.length
  const value = (at: number) => points[figure][at] as number
  const name = (i: number, j: number) => `${figure}_${i}_${j}`
  const pairs = Array.from({ length: size * size }, (_, at) => [Math.floor(at / size), at % size] as const).filter(
    ([i, j]) => value(i) <= value(j),
  )
  for (const [i, j] of pairs) program.objective.push(`${pairPoints(points, query, figure, i, j) / 1e6} ${name(i, j)}`)
  program.rows.push(`${pairs.map(([i, j]) => name(i, j)).join(' + ')} = 1`)
  for (let at = 0; at < size; at += 1) {
    const around = pairs.filter(([i, j]) => value(i) <= value(at) && value(j) >= value(at))
    program.rows.push(`z_${at} - ${around.map(([i, j]) => name(i, j)).join(' - ')} <= 0`)
  }
}

function bestByHighs(points: SetPoints, query: SetQuery): readonly number[] {
  const tubes = [...points.x.keys()]
  const program: Program = { objective: [], rows: [], names: tubes.map((at) => `z_${at}`) }
  for (const at of tubes) program.objective.push(`${(points.cost[at] as number) / 1e6} z_${at}`)
  program.rows.push(`${program.names.join(' + ')} = ${query.count}`)
  if (query.priceCap !== undefined) {
    program.rows.push(`${tubes.map((at) => `${points.price[at]} z_${at}`).join(' + ')} <= ${query.priceCap}`)
  }
  addSpread(program, points, query, 'x')
  addSpread(program, points, query, 'y')
  const rows = program.rows.map((row, at) => `r${at}: ${row}`).join('\n')
  const text = `Minimize\nobj: ${program.objective.join(' + ')}\nSubject To\n${rows}\nBinary\n${program.names.join(' ')}\nEnd`
  const solved = highs.solve(text, { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 })
  if (solved.Status !== 'Optimal') throw new Error(solved.Status)
  return tubes.filter((at) => (solved.Columns[`z_${at}`]?.Primal ?? 0) > 0.5)
}

const SHAPES = {
  'every cost another': { xStep: 1, yStep: 1, costStep: 1, costSteps: 400_000 },
  'coarse readings, four costs': { xStep: 500, yStep: 100, costStep: 100_000, costSteps: 4 },
}
const EVEN = { xYard: 5000, yYard: 1000, xWeight: 1000, yWeight: 1000 }
const TRIMMED = { xYard: 5000, yYard: 1000, xWeight: 200, yWeight: 1000 }

describe('no set that HiGHS 1.15 finds counts less, of 30 tubes', () => {
  const cases = [2, 3, 4, 6, 8].flatMap((count) =>
    Object.entries(SHAPES).map(([name, shape], at) => ({ count, name, shape, scale: at === 0 ? EVEN : TRIMMED })),
  )
  for (const { count, name, shape, scale } of cases) {
    for (const priceCap of count < 8 ? [undefined, count * 3600] : [undefined]) {
      it(`sets of ${count}, ${name}${priceCap ? `, at most ${priceCap}` : ''}`, () => {
        const points = randomPoints(generator(count + name.length), { size: 30, ...shape })
        const query: SetQuery = { count, scale, ...(priceCap ? { priceCap } : {}) }
        const best = bestSet(setIndex(points), query)
        const theirs = judge(points, bestByHighs(points, query), query)
        expect(theirs).not.toBeNull()
        expect(BigInt(best?.objective ?? -1)).toBe(theirs?.objective)
      })
    }
  }
})
