/**
 * Holds a pairing against its certificate, over the complete graph and in
 * whole numbers. Shares nothing with the search but the meaning of the plane
 * and of the certificate: it keeps its own grid and its own sums.
 *
 * What it makes sure of is in `certificate.ts`; whoever believes these lines
 * need not believe the search.
 */
import type { Certificate } from '../certificate'
import type { Pairing } from '../pairing'
import type { Plane } from '../plane'
import { nestedBlossoms } from './nested-blossoms'
import { underchargedPair } from './undercharged-pair'

export type CertificateFault =
  | 'not-a-pairing'
  | 'pair-too-wide'
  | 'cost-differs'
  | 'not-whole'
  | 'point-dual-too-high'
  | 'blossom-dual-below-zero'
  | 'blossoms-not-nested'
  | 'blossom-even'
  | 'pair-undercharged'
  | 'bound-differs'

/** null: it holds. */
export function checkCertificate(plane: Plane, pairing: Pairing): CertificateFault | null {
  const { certificate } = pairing
  const fault = pairingFault(plane, pairing) ?? dualFault(plane, certificate)
  if (fault) return fault
  const nested = nestedBlossoms(certificate.around, plane.x.length)
  if (!nested) return 'blossoms-not-nested'
  if (nested.sizes.some((size) => size < 3 || size % 2 === 0)) return 'blossom-even'
  if (boundOf(certificate, nested.sizes) !== 2n * BigInt(pairing.cost)) return 'bound-differs'
  return underchargedPair(plane, certificate, nested) ? 'pair-undercharged' : null
}

function pairingFault(plane: Plane, { partner, cost }: Pairing): CertificateFault | null {
  const { x, y, widthX, widthY, singleCost } = plane
  if (partner.length !== x.length || y.length !== x.length) return 'not-a-pairing'
  let sum = 0n
  for (let a = 0; a < partner.length; a += 1) {
    const b = partner[a] as number
    if (b === -1) {
      sum += BigInt(singleCost)
      continue
    }
    if (b === a || partner[b] !== a) return 'not-a-pairing'
    const [dx, dy] = [(x[a] as number) - (x[b] as number), (y[a] as number) - (y[b] as number)]
    if (Math.abs(dx) > widthX || Math.abs(dy) > widthY) return 'pair-too-wide'
    if (a < b) sum += BigInt(Math.abs(dx) + Math.abs(dy))
  }
  return Number.isSafeInteger(cost) && sum === BigInt(cost) ? null : 'cost-differs'
}

function dualFault({ x, singleCost }: Plane, certificate: Certificate): CertificateFault | null {
  const { pointDuals, blossomDuals, around } = certificate
  if (pointDuals.length !== x.length || around.length !== x.length + blossomDuals.length) return 'blossoms-not-nested'
  if (!pointDuals.every(Number.isSafeInteger) || !blossomDuals.every(Number.isSafeInteger)) return 'not-whole'
  if (pointDuals.some((dual) => dual > 2 * singleCost)) return 'point-dual-too-high'
  return blossomDuals.some((dual) => dual < 0) ? 'blossom-dual-below-zero' : null
}

function boundOf({ pointDuals, blossomDuals }: Certificate, sizes: readonly number[]): bigint {
  let sum = 0n
  for (const dual of pointDuals) sum += BigInt(dual)
  blossomDuals.forEach((dual, blossom) => {
    sum -= BigInt(dual) * BigInt(((sizes[blossom] as number) - 1) / 2)
  })
  return sum
}
