import { describe, expect, it } from 'vitest'
import { stockType } from '@/lib/domain/stock/stock-type'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'

describe('the type of a stocked tube', () => {
  it('a 6L6GC and a 6L6WGB are one family, with a screen and one section', () => {
    const { family, base, mayHaveScreen, mayHaveTwoSections } = stockType('6l6gc', HANDBOOK_ONLY)
    expect([family, base, mayHaveScreen, mayHaveTwoSections]).toEqual([
      stockType('6L6WGB', HANDBOOK_ONLY).family,
      'octal',
      true,
      false,
    ])
  })

  it('a 12AX7 is a twin without a screen', () => {
    expect(stockType('12AX7', HANDBOOK_ONLY)).toMatchObject({
      mayHaveScreen: false,
      mayHaveGrid: true,
      mayHaveTwoSections: true,
    })
  })

  it('a 5AR4 has no grid, and two plates', () => {
    expect(stockType('5AR4', HANDBOOK_ONLY)).toMatchObject({
      mayHaveScreen: false,
      mayHaveGrid: false,
      mayHaveTwoSections: true,
    })
  })

  it('an unknown designation is a family of its own however it is spaced, and may have any electrode', () => {
    expect(stockType(' 6 xyz-7 ', HANDBOOK_ONLY)).toMatchObject({
      designation: '6 xyz-7',
      variant: null,
      family: '6XYZ7',
      base: '',
      mayHaveScreen: true,
      mayHaveGrid: true,
      mayHaveTwoSections: true,
    })
  })
})
