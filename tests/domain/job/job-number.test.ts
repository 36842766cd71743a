import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { checkDigit, FIRST_JOB, jobNumber, readJobNumber } from '@/lib/domain/job/job-number'

describe('check digit', () => {
  // The example that goes with the formula of ISO/IEC 7812-1: account number 7992739871, check digit 3.
  it('of 7992739871 is 3', () => expect(checkDigit('7992739871')).toBe(3))

  // Card numbers published for testing payment forms, which satisfy the same formula (from memory).
  test.each(['4111111111111111', '378282246310005', '6011111111111117', '5555555555554444'])('%s is whole', (digits) =>
    expect(checkDigit(digits.slice(0, -1))).toBe(Number(digits.slice(-1))),
  )

  test.each([
    ['0', 0],
    ['1', 8],
    ['5', 9],
    ['9', 1],
    ['18', 2],
  ])('of %s is %i, by hand', (digits, expected) => expect(checkDigit(digits)).toBe(expected))
})

const running = fc.integer({ min: FIRST_JOB, max: 99_999_999 })

describe('a job number', () => {
  it('1001 is 1001-7', () => expect(jobNumber(FIRST_JOB)).toBe('1001-7'))

  test.each(['1001-7', '1001 7', '10017', ' 1001-7 ', '1 0 0 1 7'])('is read from %j', (typed) =>
    expect(readJobNumber(typed)).toEqual({ ok: true, value: '1001-7' }),
  )

  test('is read back whatever its size', () => {
    fc.assert(
      fc.property(running, (number) => {
        expect(readJobNumber(jobNumber(number))).toEqual({ ok: true, value: jobNumber(number) })
      }),
    )
  })

  test('with one digit misheard is refused, always', () => {
    const by = fc.integer({ min: 1, max: 9 })
    fc.assert(
      fc.property(running, fc.nat(), by, (number, at, shift) => {
        const digits = [...jobNumber(number).replace('-', '')]
        const place = at % digits.length
        digits[place] = String((Number(digits[place]) + shift) % 10)
        expect(readJobNumber(digits.join(''))).toEqual({ ok: false, fault: 'check-digit-wrong' })
      }),
    )
  })

  test('with two neighbours swapped is refused, unless they are 0 and 9', () => {
    fc.assert(
      fc.property(running, fc.nat(), (number, at) => {
        const digits = [...jobNumber(number).replace('-', '')]
        const place = at % (digits.length - 1)
        const [one, other] = [digits[place] as string, digits[place + 1] as string]
        fc.pre(one !== other && [one, other].sort().join('') !== '09')
        digits[place] = other
        digits[place + 1] = one
        expect(readJobNumber(digits.join('')).ok).toBe(false)
      }),
    )
  })

  test.each(['', '1047', '1047-03333333', 'T-0147', '10a7-3', 'Q2001'])('%j is none', (typed) =>
    expect(readJobNumber(typed)).toEqual({ ok: false, fault: 'not-a-job-number' }),
  )
})
