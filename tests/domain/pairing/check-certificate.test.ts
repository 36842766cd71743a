import { expect, test } from 'vitest'
import { type CertificateFault, checkCertificate } from '@/lib/domain/pairing/check/check-certificate'
import { pairPlane } from '@/lib/domain/pairing/pair-plane'
import type { Pairing } from '@/lib/domain/pairing/pairing'
import type { Plane } from '@/lib/domain/pairing/plane'
import { tubesPlane } from './random-tubes'

const plane = tubesPlane(401, { microamps: 100, microsiemens: 50 }, 100_000)

type Draft = {
  partner: Int32Array
  cost: number
  certificate: { pointDuals: Float64Array; blossomDuals: Float64Array; around: Int32Array }
}

function proved(of: Plane): Pairing {
  const pairing = pairPlane(of)
  if (!pairing) throw new Error('Stopped')
  return pairing
}

const good = proved(plane)

/** What the check says of the proof after a change. */
function after(change: (draft: Draft) => void): CertificateFault | null {
  const draft = structuredClone(good) as Draft
  change(draft)
  return checkCertificate(plane, draft)
}

const firstPair = (partner: Int32Array) => partner.findIndex((other) => other >= 0)
const firstSingle = (partner: Int32Array) => partner.indexOf(-1)
const nested = good.certificate.around.subarray(401).findIndex((around) => around >= 0)

test('the proof as it came holds, and has what the changes below need', () => {
  expect(checkCertificate(plane, good)).toBeNull()
  expect(firstSingle(good.partner)).toBeGreaterThanOrEqual(0)
  expect(good.certificate.blossomDuals.length).toBeGreaterThan(10)
  expect(nested).toBeGreaterThanOrEqual(0)
})

test.each<[string, CertificateFault, (draft: Draft) => void]>([
  ['a cost one lower', 'cost-differs', (draft) => draft.cost--],
  [
    'a tube in two pairs',
    'not-a-pairing',
    ({ partner }) => {
      partner[firstSingle(partner)] = firstPair(partner)
    },
  ],
  [
    'a tube paired with itself',
    'not-a-pairing',
    ({ partner }) => {
      const alone = firstSingle(partner)
      partner[alone] = alone
    },
  ],
  [
    'a partner outside the stock',
    'not-a-pairing',
    ({ partner }) => {
      partner[0] = 5000
    },
  ],
  [
    'half a step',
    'not-whole',
    ({ certificate }) => {
      certificate.pointDuals[3] = (certificate.pointDuals[3] ?? 0) + 0.5
    },
  ],
  [
    'a dual above twice the cost of a single',
    'point-dual-too-high',
    ({ certificate }) => {
      certificate.pointDuals[3] = 200_001
    },
  ],
  [
    'a blossom that pays',
    'blossom-dual-below-zero',
    ({ certificate }) => {
      certificate.blossomDuals[0] = -2
    },
  ],
  [
    'blossoms around each other',
    'blossoms-not-nested',
    ({ certificate: { around } }) => {
      around[401 + (around[401 + nested] as number)] = nested
    },
  ],
  [
    'a blossom outside the list',
    'blossoms-not-nested',
    ({ certificate: { around } }) => {
      around[0] = 100_000
    },
  ],
  [
    'a tube taken out of its blossom',
    'blossom-even',
    ({ certificate: { around } }) => {
      around[around.findIndex((blossom) => blossom >= 0)] = -1
    },
  ],
  [
    'a dual one lower',
    'bound-differs',
    ({ certificate }) => {
      certificate.pointDuals[5] = (certificate.pointDuals[5] ?? 0) - 1
    },
  ],
])('%s: %s', (_, fault, change) => {
  expect(after(change)).toBe(fault)
})

test('duals moved from one tube to another keep the sum and break a pair', () => {
  const moved = [...plane.x.keys()].filter((point) => {
    const next = (point + 7) % 401
    return (
      after(({ certificate: { pointDuals } }) => {
        pointDuals[point] = (pointDuals[point] ?? 0) + 400
        pointDuals[next] = (pointDuals[next] ?? 0) - 400
      }) === 'pair-undercharged'
    )
  })
  expect(moved.length).toBeGreaterThan(380)
})

test('two pairs that swap partners cost more, and their cost no longer meets the bound', () => {
  const swapped = after((draft) => {
    const { partner } = draft
    const a = firstPair(partner)
    const b = partner[a] as number
    const c = partner.findIndex((other, point) => other >= 0 && point !== a && point !== b)
    const d = partner[c] as number
    const wide = (p: number, q: number) =>
      Math.abs((plane.x[p] ?? 0) - (plane.x[q] ?? 0)) + Math.abs((plane.y[p] ?? 0) - (plane.y[q] ?? 0))
    for (const [p, q] of [
      [a, c],
      [b, d],
    ] as const) {
      partner[p] = q
      partner[q] = p
    }
    draft.cost += wide(a, c) + wide(b, d) - wide(a, b) - wide(c, d)
  })
  expect(['bound-differs', 'pair-too-wide']).toContain(swapped)
})

test('a pairing wider than the yardsticks is refused whatever its duals say', () => {
  expect(checkCertificate({ ...plane, widthX: 1 }, good)).toBe('pair-too-wide')
})
