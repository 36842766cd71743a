/**
 * JCGM 100:2008 (GUM), annex H.2: resistance, reactance and impedance from five
 * simultaneous readings of V, I and φ. Readings of table H.2; input means,
 * uncertainties and correlations as printed there; results of tables H.3 and
 * H.4, the printed digits from memory. The annex works the example twice: by
 * propagating the means (approach 1) and by averaging the five results (approach
 * 2). Unrounded, approach 1 gives u(X) = 0.2956 and approach 2 0.2955, printed
 * as 0.295; so only there one unit of the last digit is allowed.
 */
import { describe, expect, test } from 'vitest'
import {
  correlation,
  div,
  meanOfReadings,
  mul,
  standardUncertainty,
  through,
  type Uncertain,
} from '@/lib/domain/bias/uncertain'

const volts = [5.007, 4.994, 5.005, 4.99, 4.999]
const amperes = [0.019663, 0.019639, 0.01964, 0.019685, 0.019678]
const radians = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433]

const V = meanOfReadings(volts, 'set')
const I = meanOfReadings(amperes, 'set')
const phi = meanOfReadings(radians, 'set')

const Z = div(V, I)
const R = mul(
  Z,
  through(phi, Math.cos, (x) => -Math.sin(x)),
)
const X = mul(Z, through(phi, Math.sin, Math.cos))

const printed = (quantity: Uncertain, digits: number) => quantity.value.toFixed(digits)
const u = (quantity: Uncertain, digits: number) => standardUncertainty(quantity).toFixed(digits)

describe('GUM H.2, to the printed digits', () => {
  test('V is 4.9990 V ± 0.0032, I 19.6610 mA ± 0.0095, φ 1.04446 rad ± 0.00075', () => {
    expect([printed(V, 4), u(V, 4)]).toEqual(['4.9990', '0.0032'])
    expect([(1000 * I.value).toFixed(4), (1000 * standardUncertainty(I)).toFixed(4)]).toEqual(['19.6610', '0.0095'])
    expect([printed(phi, 5), u(phi, 5)]).toEqual(['1.04446', '0.00075'])
  })

  test('r(V,I) is −0.36, r(V,φ) 0.86, r(I,φ) −0.65', () => {
    const found = [correlation(V, I), correlation(V, phi), correlation(I, phi)]
    expect(found.map((one) => one.toFixed(2))).toEqual(['-0.36', '0.86', '-0.65'])
  })

  test('approach 1, by propagation: R is 127.732 Ω ± 0.071, X 219.847 Ω ± 0.295, Z 254.260 Ω ± 0.236', () => {
    expect([printed(R, 3), u(R, 3)]).toEqual(['127.732', '0.071'])
    expect(printed(X, 3)).toBe('219.847')
    expect(Math.abs(standardUncertainty(X) - 0.295)).toBeLessThan(0.001)
    expect([printed(Z, 3), u(Z, 3)]).toEqual(['254.260', '0.236'])
  })

  test('approach 2, by averaging the five results: the same, u(X) 0.295 as printed', () => {
    const each = (f: (v: number, i: number, p: number) => number) =>
      meanOfReadings(
        volts.map((v, k) => f(v, amperes[k] ?? Number.NaN, radians[k] ?? Number.NaN)),
        'set',
      )
    const r = each((v, i, p) => (v / i) * Math.cos(p))
    const x = each((v, i, p) => (v / i) * Math.sin(p))
    const z = each((v, i) => v / i)
    expect([r, x, z].map((one) => printed(one, 3))).toEqual(['127.732', '219.847', '254.260'])
    expect([r, x, z].map((one) => u(one, 3))).toEqual(['0.071', '0.295', '0.236'])
    const found = [correlation(r, x), correlation(r, z), correlation(x, z)]
    expect(found.map((one) => one.toFixed(3))).toEqual(['-0.588', '-0.485', '0.993'])
  })

  test('approach 1: r(R,X) is −0.588, r(R,Z) −0.485, r(X,Z) 0.993', () => {
    const found = [correlation(R, X), correlation(R, Z), correlation(X, Z)]
    expect(found.map((one) => one.toFixed(3))).toEqual(['-0.588', '-0.485', '0.993'])
  })
})
