import { describe, expect, it } from 'vitest'
import { isSameFuse, readFuse } from '@/lib/domain/safety/fuse'

describe('a fuse as it is marked', () => {
  it.each([
    ['T 2 A', { amperes: 2, speed: 'slow' }],
    ['T2AL 250 V', { amperes: 2, speed: 'slow' }],
    ['3A slow-blow', { amperes: 3, speed: 'slow' }],
    ['F 630 mA', { amperes: 0.63, speed: 'fast' }],
    ['3.15 A', { amperes: 3.15, speed: null }],
    ['T3,15A', { amperes: 3.15, speed: 'slow' }],
    ['1/2 A', { amperes: 0.5, speed: null }],
    ['1 1/2 A', { amperes: 1.5, speed: null }],
    ['2-1/2 A slow', { amperes: 2.5, speed: 'slow' }],
    ['3 AG 2 A', { amperes: 2, speed: null }],
    ['2 A SB', { amperes: 2, speed: 'slow' }],
  ] as const)('“%s” is read', (text, rating) => {
    expect(readFuse(text)).toEqual(rating)
  })

  it('a fuse of twice the value, or of the other speed, is another fuse', () => {
    expect(isSameFuse('T 2 A', 'T 4 A')).toBe(false)
    expect(isSameFuse('T 2 A', 'F 2 A')).toBe(false)
    expect(isSameFuse('T 2 A', 'T2AL 250 V')).toBe(true)
    expect(isSameFuse('630 mA', 'T 0.63 A')).toBe(true)
    expect(isSameFuse('1 1/2 A', '1.5 A')).toBe(true)
  })

  it('what cannot be read is left to the one who signs', () => {
    expect(isSameFuse('', 'T 2 A')).toBeNull()
    expect(isSameFuse('as the plate says', 'T 2 A')).toBeNull()
  })
})
