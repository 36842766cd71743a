import { describe, expect, expectTypeOf, it, test } from 'vitest'
import * as z from 'zod/mini'
import {
  amount,
  choice,
  day,
  email,
  flag,
  measure,
  optionalChoice,
  requiredAmount,
  requiredMeasure,
  rows,
  text,
  thousandths,
  version,
} from '@/app/_components/form/fields'

/** The value, or the one sentence. */
function read(schema: z.ZodMiniType, typed: unknown) {
  const parsed = schema.safeParse(typed)
  if (parsed.success) return parsed.data
  expect(parsed.error.issues).toHaveLength(1)
  return `! ${parsed.error.issues[0]?.message}`
}

describe('a measure', () => {
  const current = measure({ label: 'V3 cathode current', unit: 'mA', min: 0, max: 200, scale: 0.001 })

  test.each(['', '   ', undefined])('%j is left empty, and empty is not zero', (typed) =>
    expect(read(current, typed)).toBeNull(),
  )

  test.each([
    ['0', 0],
    ['51', 0.051],
    ['51,5', 0.0515],
    ['51.5', 0.0515],
    ['200', 0.2],
    ['0.1', 0.0001],
  ])('“%s” mA is %d A, the nearest there is', (typed, amps) => expect(read(current, typed)).toBe(amps))

  test.each([
    ['abc', '! V3 cathode current: “abc” is not a number. Type a number between 0 and 200 mA.'],
    ['201', '! V3 cathode current: 201 mA is too high. It must be between 0 and 200 mA.'],
    ['-0,5', '! V3 cathode current: -0.5 mA is too low. It must be between 0 and 200 mA.'],
  ])('“%s” is refused by name, value and bound', (typed, sentence) => expect(read(current, typed)).toBe(sentence))

  it('below nothing, where there can be nothing below it, says what to do', () => {
    const drop = measure({ label: 'Sense-resistor drop', unit: 'mV', min: 0, max: 5000, belowZero: 'Swap the probes.' })
    expect(read(drop, '-35')).toBe('! Sense-resistor drop: -35 mV is below 0. Swap the probes.')
    expect(read(drop, '0')).toBe(0)
  })

  it('every whole milliampere up to 200 is its own 1/1000', () => {
    for (let milliamps = 0; milliamps <= 200; milliamps += 1)
      expect(read(current, String(milliamps))).toBe(milliamps / 1000)
  })

  it('a bound that is itself refused is named so', () => {
    const resistor = measure({ label: 'Resistor', unit: 'Ω', min: 0, max: 1e6, above: true })
    expect(read(resistor, '0')).toBe('! Resistor: 0 Ω is too low. It must be more than 0 and at most 1000000 Ω.')
    expect(read(resistor, '0,1')).toBe(0.1)
  })

  it('a whole number is not rounded', () => {
    const days = requiredMeasure({ label: 'Warranty', unit: 'days', min: 0, max: 3650, whole: true })
    expect(read(days, '90,5')).toBe('! Warranty: 90.5 days must be a whole number.')
    expect(read(days, '90,0')).toBe(90)
  })

  it('a larger unit is multiplied', () => {
    expect(read(requiredMeasure({ label: 'Insulation', unit: 'MΩ', min: 0.1, max: 1000, scale: 1e6 }), '1,5')).toBe(
      1_500_000,
    )
  })

  test.each(['', undefined])('a required one refuses %j', (typed) =>
    expect(read(requiredMeasure({ label: 'Mains voltage', unit: 'V', min: 90, max: 260 }), typed)).toBe(
      '! Mains voltage is empty. Type a number between 90 and 260 V.',
    ),
  )

  it('what is typed is told in full up to thirty characters', () => {
    expect(read(current, 'x'.repeat(31))).toContain(`“${'x'.repeat(30)}…”`)
  })
})

describe('an amount', () => {
  const euros = { label: 'Price', currency: 'EUR', digits: 2 }

  test.each([
    ['12,50', 1250],
    ['12.5', 1250],
    ['1.234,50', 123_450],
    ['1,234.50', 123_450],
    ['0', 0],
  ])('“%s” EUR is %i cents', (typed, cents) => expect(read(amount(euros), typed)).toBe(cents))

  test.each([
    ['12,505', '! Price: “12,505” has more than 2 decimals, and EUR has 2.'],
    ['-1', '! Price: -1.00 EUR is too low. The least is 0.00 EUR.'],
    ['10000000,01', '! Price: 10000000.01 EUR is too high. The most is 10000000.00 EUR.'],
    ['ten', '! Price: “ten” is not an amount. Type it like 12.50 EUR.'],
  ])('“%s” is refused', (typed, sentence) => expect(read(amount(euros), typed)).toBe(sentence))

  it('follows the decimals of its currency', () => {
    const yen = { label: 'Price', currency: 'JPY', digits: 0 }
    expect(read(amount(yen), '1250')).toBe(1250)
    expect(read(amount(yen), '12,5')).toBe('! Price: “12,5” has decimals, and JPY has none.')
    expect(read(amount({ label: 'Price', currency: 'BHD', digits: 3 }), '1,255')).toBe(1255)
  })

  it('empty is nothing agreed, or refused where it is needed', () => {
    expect(read(amount(euros), ' ')).toBeNull()
    expect(read(requiredAmount(euros), ' ')).toBe('! Price is empty. Type an amount in EUR.')
  })
})

test.each([
  ['1,25', 1250],
  ['0.001', 1],
  ['200', 200_000],
  ['', '! Hours is empty. Type a number between 0.001 and 200.'],
  ['0', '! Hours: 0 is outside 0.001 to 200.'],
  ['200,001', '! Hours: 200.001 is outside 0.001 to 200.'],
  ['1.2345', '! Hours: “1.2345” is not a number with at most three decimals.'],
])('thousandths of “%s”: %s', (typed, expected) =>
  expect(read(thousandths({ label: 'Hours', min: 1, max: 200_000 }), typed)).toBe(expected),
)

describe('text', () => {
  it('is trimmed, and may be empty unless it is required', () => {
    expect(read(text({ label: 'Name' }), '  Ines  ')).toBe('Ines')
    expect(read(text({ label: 'Name' }), undefined)).toBe('')
    expect(read(text({ label: 'Name', required: true }), '   ')).toBe('! Name is empty. Please fill it in.')
  })
  it('has a length', () => {
    expect(read(text({ label: 'Note', max: 3 }), 'abc')).toBe('abc')
    expect(read(text({ label: 'Note', max: 3 }), 'abcd')).toBe('! Note has 4 characters; at most 3 fit.')
  })
  it('that comes as anything else is refused in the same words', () => {
    expect(read(text({ label: 'Note' }), { deep: 'x' })).toBe('! This box could not be read. Load the page again.')
  })
})

test.each([
  ['', ''],
  ['ines@bench.example', 'ines@bench.example'],
  ['ines', '! E-mail: “ines” is not an e-mail address. It needs the form name@place.tld.'],
  ['a b@c.de', '! E-mail: “a b@c.de” is not an e-mail address. It needs the form name@place.tld.'],
  ['a@b@c.de', '! E-mail: “a@b@c.de” is not an e-mail address. It needs the form name@place.tld.'],
  ['Ines <i@c.de>', '! E-mail: “Ines <i@c.de>” is not an e-mail address. It needs the form name@place.tld.'],
])('e-mail “%s” gives “%s”', (typed, expected) => expect(read(email({ label: 'E-mail' }), typed)).toBe(expected))

describe('a choice', () => {
  const role = choice('Work', ['counter', 'technician'])
  it('is one of its options', () => {
    expectTypeOf<z.output<typeof role>>().toEqualTypeOf<'counter' | 'technician'>()
    expect(read(role, 'counter')).toBe('counter')
    expect(read(role, '')).toBe('! Work: nothing is chosen. Choose one.')
    expect(read(role, 'owner')).toBe('! Work: “owner” is not one of counter, technician.')
  })
  it('may be left open when it is optional', () => {
    expect(read(optionalChoice('Side', ['A', 'B']), undefined)).toBe('')
    expect(read(optionalChoice('Side', ['A', 'B']), 'C')).toBe('! Side: “C” is not one of A, B.')
  })
})

test.each([
  ['2026-03-01', false, '2026-03-01'],
  ['', false, null],
  ['', true, '! Promised on is empty. Choose a day.'],
  ['2026-02-30', false, '! Promised on: “2026-02-30” is not a day. Write it as year-month-day.'],
  ['1.3.2026', false, '! Promised on: “1.3.2026” is not a day. Write it as year-month-day.'],
])('day “%s”, required %s: %s', (typed, required, expected) =>
  expect(read(day({ label: 'Promised on', required }), typed)).toBe(expected),
)

test.each([
  ['on', true],
  ['true', true],
  ['', false],
  ['off', false],
  [undefined, false],
])('a tick sent as %j is %s', (typed, expected) => expect(read(flag(), typed)).toBe(expected))

test.each([
  ['7', 7],
  ['', 0],
  ['-1', 0],
  ['1e9', 0],
  [undefined, 0],
])('version %j is %i', (typed, expected) => expect(read(version(), typed)).toBe(expected))

describe('rows', () => {
  const lines = z.object({ lines: rows(z.object({ text: text({ label: 'Line', required: true }) })) })

  it('close their holes', () => {
    const holed = [undefined, { text: 'b' }, undefined, { text: 'd' }]
    expect(read(lines, { lines: holed })).toEqual({ lines: [{ text: 'b' }, { text: 'd' }] })
  })
  it('may be missing altogether', () => expect(read(lines, {})).toEqual({ lines: [] }))
  it('name a fault by the place in the form, holes counted', () => {
    const parsed = lines.safeParse({ lines: [undefined, { text: 'b' }, { text: '' }] })
    expect(parsed.error?.issues.map((issue) => issue.path.join('.'))).toEqual(['lines.2.text'])
  })
})
