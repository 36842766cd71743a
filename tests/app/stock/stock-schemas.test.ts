import { describe, expect, it } from 'vitest'
import { rowsOf } from '@/app/_components/form/edit-rows'
import { freshForm } from '@/app/_components/form/form-state'
import { readForm } from '@/app/_components/form/read-form'
import { addTestSchema, addTestValues } from '@/app/stock/[tubeId]/tube-page-schema'
import { furtherOf } from '@/app/stock/further-schema'
import { newTubeSchema } from '@/app/stock/new/new-tube-schema'
import { nextDelivery, receiveSchema, receiveValues } from '@/app/stock/receive/receive-schema'
import { blankTest, testEntryOf } from '@/app/stock/test-schema'
import { SHARED_BLANK, type StockKit, tubeSchema, tubeValues } from '@/app/stock/tube-schema'
import type { Day } from '@/lib/domain/calendar'
import { isTestGiven } from '@/lib/domain/stock/test-entry'
import { NOTHING_FURTHER } from '@/lib/domain/stock/tube-further'

const kit: StockKit = { currency: 'EUR', digits: 2, words: 'UK' }
const start = { today: '2031-05-06' as Day, instrument: 'Bench tester 1' }

function formOf(values: Readonly<Record<string, string>>): FormData {
  const form = new FormData()
  for (const [name, value] of Object.entries(values)) form.set(name, value)
  return form
}

function readNew(over: Readonly<Record<string, string>>) {
  const values = {
    mark: '',
    ...SHARED_BLANK,
    designation: 'EL34',
    condition: 'pull',
    price: '45,50',
    ...blankTest(start),
    ...over,
  }
  return readForm(newTubeSchema(kit), freshForm({}), formOf(values))
}

describe('taking in one', () => {
  it('reads 72,5 mA, 11 mA/V and −13.5 V as SI, and 45,50 € as 4550 cents', () => {
    const read = readNew({
      plateVolts: '250',
      screenVolts: '250',
      gridVolts: '−13.5',
      plateMilliamps: '72,5',
      gm: '11',
    })
    if (!read.ok) throw new Error(read.state.message)
    expect(read.value).toMatchObject({ price: 4550, cost: null })
    const { plateVoltage, gridVoltage, sections } = testEntryOf(read.value)
    expect([plateVoltage, gridVoltage]).toEqual([250, -13.5])
    expect(sections).toHaveLength(1)
    expect(sections[0]?.plateCurrent).toBeCloseTo(0.0725, 12)
    expect(sections[0]?.transconductance).toBeCloseTo(0.011, 12)
  })

  it('without a reading is no test: an empty box is not zero', () => {
    const read = readNew({})
    if (!read.ok) throw new Error(read.state.message)
    const entry = testEntryOf(read.value)
    expect(entry.sections).toEqual([{ section: 1, plateCurrent: null, screenCurrent: null, transconductance: null }])
    expect(isTestGiven(entry)).toBe(false)
  })

  it.each([
    ['plateVolts', '0', 'Anode volts: 0 V is too low. It must be more than 0 and at most 1500 V.'],
    ['screenVolts', '1001', 'Screen volts: 1001 V is too high. It must be more than 0 and at most 1000 V.'],
    ['gridVolts', '14', 'Grid volts: 14 V is too high. It must be between -300 and 0 V.'],
    ['plateMilliamps', '-1', 'Anode current: -1 mA is too low. It must be between 0 and 1000 mA.'],
    ['gm', '5500', 'Transconductance: 5500 mA/V is too high. It must be between 0 and 60 mA/V.'],
    ['price', '', 'Price is empty. Type an amount in EUR.'],
    ['condition', '', 'Condition: nothing is chosen. Choose one.'],
    ['designation', ' ', 'Type is empty. Please fill it in.'],
  ])('%s “%s” is refused with its bound, and nothing typed is lost', (name, typed, sentence) => {
    const read = readNew({ [name]: typed, location: 'Drawer 4' })
    if (read.ok) throw new Error('was taken')
    expect(read.state.faults).toEqual({ [name]: sentence })
    expect(read.state.values).toMatchObject({ [name]: typed, location: 'Drawer 4' })
  })

  it('needs no test fields at all: somebody at the counter is shown none', () => {
    const form = formOf({ mark: '', ...SHARED_BLANK, designation: 'EL34', condition: 'pull', price: '45' })
    expect(readForm(newTubeSchema(kit), freshForm({}), form).ok).toBe(true)
  })
})

describe('adding a test', () => {
  it('starts from the instrument and point of the last one, never from its readings', () => {
    const last = { instrumentName: 'Other tester', plateVoltage: 250, screenVoltage: null, gridVoltage: -8.5 }
    const values = addTestValues('id', start, last as Parameters<typeof addTestValues>[2])
    expect(values).toMatchObject({
      instrumentName: 'Other tester',
      plateVolts: '250',
      screenVolts: '',
      gridVolts: '-8.5',
      plateMilliamps: '',
    })
    expect(addTestSchema('US').safeParse(values).success).toBe(true)
  })
})

describe('a delivery', () => {
  it('keeps what the tubes share for the next one, and empties the rows', () => {
    const values = {
      ...receiveValues(start),
      designation: 'EL84',
      untested: '3',
      'rows.0.mark': 'X1',
      'rows.0.shorts': 'on',
      'rows.7.gm': '9',
    }
    const next = nextDelivery(values)
    expect(next).toMatchObject({ designation: 'EL84', untested: '', day: '2031-05-06' })
    expect(
      rowsOf(next, 'rows')
        .flatMap((row) => Object.values(row))
        .join(''),
    ).toBe('')
  })

  it('reads the further facts all share by the rules of a single tube, and makes none of them a shop reference', () => {
    const shared = { ...receiveValues(start), designation: 'EL84', condition: 'pull', price: '9' }
    const read = readForm(
      receiveSchema(kit),
      freshForm({}),
      formOf({ ...shared, used: 'unused', glass: 'smoked', hoursBefore: '12,5', setName: 'Carton 7' }),
    )
    if (!read.ok) throw new Error(read.state.message)
    expect(furtherOf(read.value)).toEqual({
      ...NOTHING_FURTHER,
      ...{ used: 'unused', glass: 'smoked', hoursBefore: 12.5, setName: 'Carton 7' },
    })
    const refused = readForm(receiveSchema(kit), freshForm({}), formOf({ ...shared, hoursBefore: '-1' }))
    expect(refused.ok ? [] : Object.keys(refused.state.faults)).toEqual(['hoursBefore'])
  })

  it('names the row’s own field when a reading is out of bounds', () => {
    const values = {
      ...receiveValues(start),
      designation: 'EL84',
      condition: 'pull',
      price: '9',
      'rows.2.plateMilliamps': '4800',
    }
    const read = readForm(receiveSchema(kit), freshForm({}), formOf(values))
    expect(read.ok ? {} : read.state.faults).toEqual({
      'rows.2.plateMilliamps': 'Anode current: 4800 mA is too high. It must be between 0 and 1000 mA.',
    })
  })
})

it('the sheet of a tube reads back what it shows', () => {
  const tube = {
    id: 'a',
    mark: 'T-1',
    designation: 'EL34',
    condition: 'pull',
    acquired: '',
    construction: '',
    location: '',
    cost: 1,
    price: 4550,
    version: 3,
  }
  const further = {
    ...NOTHING_FURTHER,
    glass: 'smoked',
    warrantyUntil: '2031-12-31' as Day,
    hoursBefore: 12.5,
    reference: true,
  }
  const values = tubeValues({ ...tube, further } as Parameters<typeof tubeValues>[0], kit)
  expect(tubeSchema(kit).parse(values)).toEqual({ ...tube, ...further })
})
