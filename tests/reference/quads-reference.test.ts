/**
 * Quads against HiGHS 1.15 alone, given every quad of the stock at once as a set partition: no
 * prices, no branches, no listing, no ceiling.
 */
import loadHighs from 'highs'
import { expect, test } from 'vitest'
import type { Plane } from '@/lib/domain/pairing/plane'
import { planSets } from '@/lib/planning/quads/plan-sets'
import { spreadOf } from '@/tests/domain/pairing/brute-force'
import { tubesPlane } from '@/tests/domain/pairing/random-tubes'

function* quadsOf(points: number): Generator<readonly number[]> {
  for (let a = 0; a < points; a += 1)
    for (let b = a + 1; b < points; b += 1)
      for (let c = b + 1; c < points; c += 1) for (let d = c + 1; d < points; d += 1) yield [a, b, c, d]
}

async function costByHighs(plane: Plane): Promise<number> {
  const highs = await loadHighs()
  const points = plane.x.length
  const sets = [...quadsOf(points)].flatMap((members) => {
    const spread = spreadOf(plane, members)
    return spread === null ? [] : [{ members, spread }]
  })
  const singles = [...plane.x.keys()].map((point) => ({ members: [point], spread: plane.singleCost }))
  const columns = [...sets, ...singles]
  const starts = [0]
  for (const { members } of columns) starts.push((starts.at(-1) ?? 0) + members.length)
  const indices = columns.flatMap(({ members }) => members)
  const bounds = { numRows: points, numCols: columns.length }
  const model = highs.createModel({
    ...bounds,
    colCost: columns.map(({ spread }) => spread),
    colLower: columns.map(() => 0),
    colUpper: columns.map(() => 1),
    rowLower: Array.from({ length: points }, () => 1),
    rowUpper: Array.from({ length: points }, () => 1),
    matrix: { format: 'csc', ...bounds, starts, indices, values: indices.map(() => 1) },
    integrality: columns.map(() => highs.constants.variableType.integer),
  })
  try {
    model.options.set({ output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0.5 })
    model.run()
    if (model.getModelStatus() !== highs.constants.modelStatus.optimal) throw new Error('HiGHS did not solve it')
    return Math.round(model.getObjectiveValue())
  } finally {
    model.dispose()
  }
}

test.each([
  [17, 1],
  [20, 100],
  [23, 1],
])('%i tubes, readings to %i µS: the cost is that of HiGHS given every quad', async (count, coarse) => {
  const plane = tubesPlane(count, { microamps: 2 * coarse, microsiemens: coarse }, 100_000)
  const found = await planSets(plane, { size: 4, seconds: 60, now: () => performance.now() })
  expect({ cost: found.cost, ended: found.ended }).toEqual({ cost: await costByHighs(plane), ended: 'optimal' })
})
