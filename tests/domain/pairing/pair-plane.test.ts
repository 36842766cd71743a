import { describe, expect, test } from 'vitest'
import { checkCertificate } from '@/lib/domain/pairing/check/check-certificate'
import { pairOnEdges, pairPlane } from '@/lib/domain/pairing/pair-plane'
import type { Pairing } from '@/lib/domain/pairing/pairing'
import { type Plane, permittedIn } from '@/lib/domain/pairing/plane'
import { leastCost } from './brute-force'
import { randomPlane, shuffled } from './random-plane'
import { tubesPlane } from './random-tubes'

function paired(plane: Plane): Pairing {
  const pairing = pairPlane(plane)
  if (!pairing) throw new Error('Stopped without being told to')
  return pairing
}

test('3000 random planes of up to 10 points cost what the plain way costs, and each proof holds', () => {
  for (let seed = 1; seed <= 3000; seed += 1) {
    const plane = randomPlane(seed, 10)
    const pairing = paired(plane)
    expect({ seed, cost: pairing.cost }).toEqual({ seed, cost: leastCost(plane, 2) })
    expect({ seed, fault: checkCertificate(plane, pairing) }).toEqual({ seed, fault: null })
  }
})

test('400 random planes of up to 160 points: nobody twice, nothing too wide, each proof holds', () => {
  for (let seed = 1; seed <= 400; seed += 1) {
    const plane = randomPlane(5000 + seed, 160, 11)
    const pairing = paired(plane)
    expect({ seed, fault: checkCertificate(plane, pairing) }).toEqual({ seed, fault: null })
    pairing.partner.forEach((other, point) => {
      if (other === -1) return
      expect(pairing.partner[other]).toBe(point)
      expect(permittedIn(plane, point, other)).toBe(true)
    })
  }
})

test('numbering the points anew does not change the cost', () => {
  for (let seed = 1; seed <= 100; seed += 1) {
    const plane = randomPlane(9000 + seed, 120, 20)
    expect(paired(shuffled(plane, seed).plane).cost).toBe(paired(plane).cost)
  }
})

describe('stocks of tubes', () => {
  test.each([
    ['fine readings, even', 1000, 1, 100_000],
    ['fine readings, odd, as many pairs as can be', 1001, 1, 100_000_000],
    ['readings to 0.1 mA and 0.05 mA/V, odd', 1501, 50, 100_000],
    ['all but a few alike', 601, 5000, 100_000_000],
  ])('%s: %i tubes, the proof holds over all pairs', (_, count, coarse, singleCost) => {
    const plane = tubesPlane(count, { microamps: 2 * coarse, microsiemens: coarse }, singleCost)
    const pairing = paired(plane)
    expect(checkCertificate(plane, pairing)).toBeNull()
  })

  // One of an odd number must stay alone; ever wider gaps put each blossom inside the next.
  test('1001 tubes with ever wider gaps nest 500 blossoms in one another', () => {
    const x = Int32Array.from({ length: 1001 }, (_, place) => place * place)
    const plane: Plane = { x, y: new Int32Array(1001), widthX: 2 ** 27, widthY: 0, singleCost: 2 ** 28 }
    const pairing = paired(plane)
    expect(pairing.partner.filter((other) => other === -1)).toHaveLength(1)
    expect(checkCertificate(plane, pairing)).toBeNull()
    expect(depthOf(pairing)).toBe(500)
  })
})

function depthOf({ certificate: { around, pointDuals } }: Pairing): number {
  return [...pointDuals.keys()].reduce((deepest, point) => {
    let depth = 0
    for (let node = around[point] as number; node >= 0; node = around[pointDuals.length + node] as number) depth += 1
    return Math.max(deepest, depth)
  }, 0)
}

test('near pairs alone are not enough: the missing ones lower the cost, and only then does the proof hold', () => {
  const plane = tubesPlane(300, { microamps: 1, microsiemens: 1 }, 100_000)
  // Each tube with the next in the order of current only.
  const order = [...plane.x.keys()].sort((a, b) => (plane.x[a] as number) - (plane.x[b] as number))
  const chain = order.slice(1).map((point, place) => [order[place] as number, point] as const)
  const near = chain.filter(([a, b]) => permittedIn(plane, a, b))
  const sparse = pairOnEdges(plane, { from: near.map(([a]) => a), to: near.map(([, b]) => b) })
  expect(checkCertificate(plane, sparse)).toBe('pair-undercharged')
  const whole = paired(plane)
  expect(whole.cost).toBeLessThan(sparse.cost)
  expect(checkCertificate(plane, whole)).toBeNull()
})

test('the watch is told of each round and can stop it', () => {
  const plane = tubesPlane(800, { microamps: 100, microsiemens: 50 }, 100_000)
  const missing: number[] = []
  expect(pairPlane(plane, (round) => missing.push(round.missing) < 2)).toBeNull()
  expect(missing).toHaveLength(2)
  expect(missing[0]).toBeGreaterThan(0)
})

test('no tubes, one tube', () => {
  const empty: Plane = { x: new Int32Array(0), y: new Int32Array(0), widthX: 1, widthY: 1, singleCost: 5 }
  expect(paired(empty).cost).toBe(0)
  const one: Plane = { ...empty, x: Int32Array.of(3), y: Int32Array.of(4) }
  expect(paired(one)).toMatchObject({ cost: 5, partner: Int32Array.of(-1) })
  expect(checkCertificate(one, paired(one))).toBeNull()
})
