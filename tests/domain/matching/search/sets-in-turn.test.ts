/** Sets one after another, of which only the first is searched among all tubes: against searching each among all. */
import { describe, expect, it } from 'vitest'
import { bestSet, type SetQuery } from '@/lib/domain/matching/search/best-set'
import { setIndex } from '@/lib/domain/matching/search/set-index'
import { SetsInTurn } from '@/lib/domain/matching/search/sets-in-turn'
import { generator } from '../tubes'

type Shape = {
  readonly step: number
  readonly costs: number
  readonly capped: boolean
  readonly stocks: number
}

/** Currents in steps of so many µA: coarse steps make tubes of one and the same reading. */
function stock(random: () => number, size: number, { step, costs }: Shape) {
  const column = (of: () => number) => Int32Array.from({ length: size }, of)
  return setIndex({
    x: column(() => step * Math.round((30_000 + 9000 * random()) / step)),
    y: column(() => step * Math.round((5000 + 900 * random()) / step)),
    cost: column(() => Math.floor(costs * random())),
    price: column(() => 1000 + Math.floor(5000 * random())),
  })
}

const SCALE = { xYard: 5000, yYard: 1000, xWeight: 800, yWeight: 500 }

function compare(seed: number, shape: Shape): number {
  const random = generator(seed)
  const size = 60 + Math.floor(300 * random())
  const index = stock(random, size, shape)
  const count = 2 + Math.floor(5 * random())
  const sides = count >= 4 && count % 2 === 0 ? { balance: { yard: 5000, weight: 1000 } } : {}
  const query: SetQuery = { count, scale: SCALE, ...sides, ...(shape.capped ? { priceCap: 2600 * count } : {}) }
  const sets = new SetsInTurn(index, query)
  const excluded = new Uint8Array(size)
  let found = 0
  for (;;) {
    const set = sets.best()
    expect(set, `seed ${seed}, set ${found + 1}`).toEqual(bestSet(index, { ...query, excluded }))
    if (!set) return found
    found += 1
    // Some more than the set, as where other choices took them.
    const gone = random() < 0.3 ? [...set.places, Math.floor(size * random())] : set.places
    for (const place of gone) excluded[place] = 1
    sets.leaveOut(gone)
  }
}

const SHAPES: readonly (readonly [string, Shape])[] = [
  ['fine readings, costs that weigh', { step: 1, costs: 400_000, capped: false, stocks: 40 }],
  ['fine readings, hardly any costs', { step: 1, costs: 300, capped: false, stocks: 40 }],
  ['coarse readings, many alike', { step: 1000, costs: 50_000, capped: false, stocks: 40 }],
  ['coarse readings, all costs alike', { step: 1000, costs: 1, capped: false, stocks: 40 }],
  ['a limit on the price', { step: 100, costs: 100_000, capped: true, stocks: 10 }],
]

describe('every set until no tubes are left', () => {
  it.each(SHAPES)('%s', (_, shape) => {
    const lengths = Array.from({ length: shape.stocks }, (_, nth) => compare(20_311_126 + nth, shape))
    // Or the sets after the first would not be tried.
    expect(Math.max(...lengths)).toBeGreaterThan(20)
  })
})
