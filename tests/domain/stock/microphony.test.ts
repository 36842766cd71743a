import { describe, expect, it } from 'vitest'
import { byBalance } from '@/lib/domain/matching/balanced-sections'
import { heardTexts, microphonyGrade, noiseText } from '@/lib/domain/stock/microphony'
import { aTest, aTube } from '@/tests/domain/matching/tubes'
import { section } from '@/tests/support/stocked-shop'

describe('microphony beside noise', () => {
  it('counts as none, slight or strong where it begins so; own words are kept and count as nothing', () => {
    const told = ['none', 'Slight, at full volume', 'STRONG: rings for two seconds', 'sings', 'nonesuch', '', null]
    expect(told.map(microphonyGrade)).toEqual(['none', 'slight', 'strong', null, null, null, null])
  })

  it('what was written when both were one box stays noise, and says that it may include microphony', () => {
    expect(noiseText({ noise: 'rings when tapped', microphony: null })).toBe(
      'rings when tapped (may include microphony)',
    )
    expect(noiseText({ noise: 'hiss', microphony: '' })).toBe('hiss')
    expect(noiseText({ noise: '', microphony: null })).toBe('')
    expect(heardTexts({ noise: 'hiss', microphony: 'slight' })).toEqual(['Noise: hiss', 'Microphony: slight'])
  })

  it('a twin that rings strongly comes after a worse balanced one that does not', () => {
    const sections = (milliamps: number) => [section(1, 1.6), section(milliamps, 1.6)].map(plain)
    const plain = ({ plateCurrent, transconductance }: ReturnType<typeof section>) => {
      if (plateCurrent === null) throw new Error('Not read')
      return { plateCurrent, transconductance }
    }
    const twin = (mark: string, milliamps: number, ringsStrongly = false) => ({
      ...{ ...aTube(mark), test: aTest(), ringsStrongly },
      sections: sections(milliamps) as [ReturnType<typeof plain>, ReturnType<typeof plain>],
    })
    const order = byBalance([twin('A', 1, true), twin('B', 1.2), twin('C', 1.1)])
    expect(order.map(({ candidate }) => candidate.mark)).toEqual(['C', 'B', 'A'])
  })
})
