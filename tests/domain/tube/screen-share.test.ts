import { describe, expect, test } from 'vitest'
import { HANDBOOK, handbookType } from '@/lib/domain/tube/handbook'
import { rowScreenShare, typicalScreenShare } from '@/lib/domain/tube/screen-share'

const share = (id: string) => typicalScreenShare(handbookType(id))

describe('typical screen share of cathode current', () => {
  test('6V6: the median of 3/32, 4.5/49.5, 2.2/36.2 and 5/75 is 7.9 %, ± 3 points', () => {
    expect(share('6V6')).toMatchObject({ halfWidth: 0.03, basis: 'handbook-rows', rows: 4 })
    expect(share('6V6')?.share).toBeCloseTo((4.5 / 49.5 + 5 / 75) / 2, 12)
  })

  test('the 6550 rows spread from 4.4 to 7.9 %: the half-width grows to the farthest row', () => {
    const found = share('6550')
    expect((found?.share ?? 0) + (found?.halfWidth ?? 0)).toBeCloseTo(12 / 152, 12)
  })

  test('the only KT88 row is recalled with low confidence: practice stands in, from memory', () => {
    expect(share('KT88')).toEqual({ share: 0.06, halfWidth: 0.04, basis: 'from-memory', rows: 0 })
  })

  test('triode-connected rows say nothing of the screen', () => {
    const triode = handbookType('6V6').rows.find(({ connection }) => connection === 'triode')
    expect(triode && rowScreenShare(triode)).toBeNull()
  })

  test('every output type with a screen has a share between 0 and 25 % that never reaches below zero', () => {
    for (const type of HANDBOOK.filter(({ role, tubeClass }) => role === 'output' && tubeClass !== 'power-triode')) {
      const found = typicalScreenShare(type)
      expect(found?.share, type.id).toBeGreaterThan(0)
      expect(found?.share, type.id).toBeLessThan(0.25)
      expect(found?.halfWidth, type.id).toBeGreaterThanOrEqual(0.03)
      expect((found?.share ?? 0) - (found?.halfWidth ?? 1), type.id).toBeGreaterThanOrEqual(0)
    }
  })

  test('types without a screen have none', () => {
    expect(['2A3', '12AX7', '6J5', '5AR4'].map(share)).toEqual([null, null, null, null])
  })
})
