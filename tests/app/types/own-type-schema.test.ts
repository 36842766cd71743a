import { describe, expect, it } from 'vitest'
import { rowsOf } from '@/app/_components/form/edit-rows'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { readForm } from '@/app/_components/form/read-form'
import { entryValues, ownTypeSchema, withoutBlankRows } from '@/app/types/own-type-schema'
import { startingSheet } from '@/app/types/own-type-values'
import { refusedType } from '@/app/types/refused-type'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { ownEntry, rectifierEntry, triodeEntry } from '@/tests/domain/tube/own/own-type-fixture'

function read(over: FormValues, from: FormValues = entryValues(ownEntry())) {
  const form = new FormData()
  for (const [name, value] of Object.entries({ id: '', version: '0', ...from, ...over })) form.set(name, value)
  return readForm(ownTypeSchema('US'), freshForm({}), form)
}

function faultsOf(over: FormValues, from?: FormValues): Readonly<Record<string, string>> {
  const result = read(over, from)
  return result.ok ? {} : result.state.faults
}

describe('the sheet of a type', () => {
  it.each([
    ['output tube', ownEntry()],
    ['triode', triodeEntry()],
    ['rectifier', rectifierEntry()],
    ['bare one', ownEntry({ limits: {}, pins: null, rows: [], curves: null, otherNumbers: [] })],
  ])('of an %s reads back as it was written', (_what, entry) => {
    const result = read({}, entryValues(entry))
    expect(result.ok ? result.value.entry : result.state.faults).toEqual(entry)
  })

  it('tidies designations, reads a comma in 5,4 mA/V, and takes a typographic minus', () => {
    const result = read({
      designation: ' qh  25 ',
      otherNumbers: 'qh25a; QH25B,,\nQH25C',
      'rows.0.gmMilliampsPerVolt': '5,4',
      'rows.0.gridVolts': '−17',
    })
    if (!result.ok) return expect.fail(result.state.message)
    const { designation, otherNumbers, rows } = result.value.entry
    expect([designation, otherNumbers]).toEqual(['QH 25', ['QH25A', 'QH25B', 'QH25C']])
    expect(rows[0]).toMatchObject({ gmMilliampsPerVolt: 5.4, gridVolts: -17 })
  })

  it.each([
    ['designation', '', 'Designation is empty. Please fill it in.'],
    ['tubeClass', '', 'Class: nothing is chosen. Choose one.'],
    ['sourceText', ' ', 'Read from is empty. Please fill it in.'],
    ['heaterVolts', '', 'Heater voltage is empty. Type a number more than 0 and at most 150 V.'],
    ['heaterAmps', '450', 'Heater current: 450 A is too high. It must be more than 0 and at most 20 A.'],
    ['plateWatts', '0', 'Plate dissipation, limit: 0 W is too low. It must be more than 0 and at most 500 W.'],
    ['rows.0.gridVolts', '17', 'Operating point 1, Grid voltage: 17 V is too high. It must be between -400 and 0 V.'],
    [
      'rows.0.plateMilliamps',
      'abc',
      'Operating point 1, Plate current: “abc” is not a number. Type a number more than 0 and at most 2000 mA.',
    ],
    ['curvesDegree', '', 'How like: choose whether it is the same system or merely similar.'],
  ])('%s “%s” is told beside its box', (name, typed, sentence) => {
    expect(faultsOf({ [name]: typed })).toEqual({ [name]: sentence })
  })

  it('an empty limit is none, a drop needs both its numbers', () => {
    const result = read({ screenWatts: '' })
    expect(result.ok && 'screenWatts' in result.value.entry.limits).toBe(false)
    expect(faultsOf({ dropMilliamps: '' }, entryValues(rectifierEntry()))).toEqual({
      dropMilliamps: 'Drop: give the volts and the current they were read at, or neither.',
    })
  })

  it('passes empty rows over; the one told as at fault is then the one that stands there', () => {
    const values = { ...entryValues(ownEntry()), 'rows.0.plateVolts': '', 'rows.3.plateVolts': '300' }
    const blank = {
      ...values,
      ...Object.fromEntries(
        Object.keys(values)
          .filter((name) => name.startsWith('rows.0'))
          .map((name) => [name, '']),
      ),
    }
    expect(rowsOf(withoutBlankRows(blank), 'rows')).toEqual([{ plateVolts: '300' }])
    expect(Object.keys(faultsOf({}, withoutBlankRows(blank)))).toEqual(['rows.0.gridVolts', 'rows.0.plateMilliamps'])
    expect(rowsOf(withoutBlankRows(entryValues({})), 'rows')).toHaveLength(1)
  })

  it('keeps four operating points at most', () => {
    const row = (place: number) => ({
      [`rows.${place}.plateVolts`]: String(300 + place),
      [`rows.${place}.screenVolts`]: '250',
      [`rows.${place}.gridVolts`]: '-17',
      [`rows.${place}.plateMilliamps`]: '60',
    })
    const five = Object.assign({}, ...[0, 1, 2, 3, 4].map(row))
    expect(faultsOf(five)).toEqual({ rows: 'At most 4 operating points are kept.' })
  })

  it('does not take a made-up base, class or system', () => {
    expect(Object.keys(faultsOf({ tubeBase: 'five-pin', tubeClass: 'x', system: 'y' })).sort()).toEqual([
      'system',
      'tubeBase',
      'tubeClass',
    ])
  })
})

describe('a sheet started from a known type', () => {
  it('needs only a name and passes', () => {
    const { values, from } = startingSheet({ like: 'KT66', designation: 'qh66', catalogue: HANDBOOK_ONLY })
    expect(from?.designation).toBe('KT66')
    const result = read({}, values)
    expect(result.ok && result.value.entry).toMatchObject({
      designation: 'QH66',
      limits: { plateWatts: 25 },
      rows: [],
      curves: { typeId: 'KT66', degree: 'similar' },
    })
  })

  it('from what is not known is an empty one with its name', () => {
    const { values, from } = startingSheet({ like: 'QQ99', designation: 'QH66', catalogue: HANDBOOK_ONLY })
    expect(from).toBeNull()
    expect(Object.entries(values).filter(([, value]) => value !== '')).toEqual([
      ['version', '0'],
      ['designation', 'QH66'],
    ])
  })
})

describe('what the step refuses', () => {
  const shop = { timeZone: 'UTC', words: 'US' } as Parameters<typeof refusedType>[3]

  it('stands beside its box: number, pin, row, curves', () => {
    const faults = [
      { code: 'number-taken', field: 'otherNumbers', number: 'EL34', by: 'EL34' },
      { code: 'no-such-pin', field: 'pins', pin: '9', most: 8 },
      { code: 'screen-volts-missing', field: 'screenVolts', row: 1 },
      { code: 'curves-do-not-fit', field: 'curvesLike', like: '6L6', cause: 'unlike-the-type' },
    ] as const
    const state = refusedType(freshForm({}), {}, { code: 'own-type-refused', faults }, shop)
    expect(Object.keys(state.faults)).toEqual(['otherNumbers', 'pin9', 'rows.1.screenVolts', 'curvesLike'])
    expect(state.message).toMatch(/^Not saved: 4 fields need another look\. EL34 is known already/)
  })

  it('is told at the head when it concerns no box', () => {
    const state = refusedType(freshForm({}), {}, { code: 'not-your-duty', duty: 'bench-work' }, shop)
    expect([state.status, state.message]).toEqual([
      'refused',
      'Not saved. Readings and bench work are entered by a technician. Ask one to sign in.',
    ])
  })
})
