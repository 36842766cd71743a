import { describe, expect, test } from 'vitest'
import { pinHints } from '@/app/jobs/[jobNumber]/bench/pin-hints'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'

const of = (typeFitted: string, role: 'output' | 'preamp' = 'output') => pinHints({ typeFitted, role }, HANDBOOK_ONLY)

describe('pins beside the boxes', () => {
  test('a 6L6GC on base 7AC: 3, 4, 8 and 5 (common practice, no source)', () => {
    expect(of('6L6GC')).toEqual({
      plateVolts: 'pin 3',
      screenVolts: 'pin 4',
      cathodeVolts: 'pin 8',
      gridVolts: 'pin 5',
    })
  })

  test('an EL84 on base 9CV: 7, 9, 3 and 2', () => {
    expect(of('EL84')).toEqual({
      plateVolts: 'pin 7',
      screenVolts: 'pin 9',
      cathodeVolts: 'pin 3',
      gridVolts: 'pin 2',
    })
  })

  test('a 7591 has its screen on two pins, 4 and 8', () => expect(of('7591').screenVolts).toBe('pins 4 and 8'))

  test('of an ECL82 the pentode in an output socket: 6, 7, 2 and 3; elsewhere nothing is said', () => {
    expect(of('ECL82')).toEqual({
      plateVolts: 'pin 6',
      screenVolts: 'pin 7',
      cathodeVolts: 'pin 2',
      gridVolts: 'pin 3',
    })
    expect(of('ECL82', 'preamp')).toEqual({})
  })

  test('of a twin there are two of each, so none is named; nor of a type or a base that is not known', () => {
    expect([of('12AX7'), of('6973'), of('6XYZ7'), of('')]).toEqual([{}, {}, {}, {}])
  })
})
