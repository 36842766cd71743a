import { describe, expect, it } from 'vitest'
import type { Day } from '@/lib/domain/calendar'
import { stockType } from '@/lib/domain/stock/stock-type'
import { isTestGiven, type TestEntry, testedInstant, testFaults } from '@/lib/domain/stock/test-entry'
import { tubeFaultText } from '@/lib/domain/stock/tube-fault'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { section, testEntry } from '@/tests/support/stocked-shop'

const TODAY = '2031-05-06' as Day
const NOTHING: Partial<TestEntry> = {
  plateVoltage: null,
  screenVoltage: null,
  gridVoltage: null,
  sections: [section(null)],
}

const faults = (over: Partial<TestEntry>, type = '6L6GC') =>
  testFaults(testEntry(over), stockType(type, HANDBOOK_ONLY), TODAY).map(({ code, field }) => `${code} ${field}`)

describe('a test', () => {
  it('of a 6L6GC at 250 / 250 / −14 V with its plate current is complete; transconductance may be left out', () => {
    expect(faults({})).toEqual([])
    expect(faults({ sections: [section(72)] })).toEqual([])
  })

  it('without plate current is not, and without its point it compares with nothing', () => {
    expect(faults({ sections: [section(null, 6)] })).toEqual(['current-missing plateMilliamps'])
    expect(faults({ plateVoltage: null, gridVoltage: null })).toEqual([
      'point-missing plateVolts',
      'point-missing gridVolts',
    ])
  })

  it('that found a short asks for no current, and takes none', () => {
    expect(faults({ ...NOTHING, shorts: true })).toEqual([])
    expect(faults({ shorts: true })).toEqual(['reading-with-shorts plateMilliamps', 'reading-with-shorts gm'])
  })

  it('of a triode has no screen, of a rectifier no grid', () => {
    expect(faults({}, '6SN7GT')).toEqual(['no-such-electrode screenVolts'])
    expect(
      faults({ screenVoltage: null, gridVoltage: null, sections: [section(100), section(98, null, 2)] }, '5AR4'),
    ).toEqual([])
    expect(faults({ screenVoltage: null }, '5AR4')).toEqual(['no-such-electrode gridVolts', 'no-such-electrode gm'])
  })

  it('of an unknown type may have any electrode and needs none but a plate', () => {
    expect(faults({ screenVoltage: null, gridVoltage: null, sections: [section(50)] }, '6XYZ7')).toEqual([])
    expect(faults({ sections: [section(1, 1), section(1, 1, 2)] }, '6XYZ7')).toEqual([])
  })

  it('has a second section on a twin only', () => {
    const sections = [section(1.2, 1.6), section(1.1, 1.5, 2)]
    expect(faults({ screenVoltage: null, sections }, '12AX7')).toEqual([])
    expect(faults({ sections })).toEqual(['one-section-only secondPlateMilliamps', 'one-section-only secondGm'])
  })

  it('is dated today at the latest, and names its instrument', () => {
    expect(faults({ day: '2031-05-07' as Day })).toEqual(['day-ahead day'])
    expect(faults({ day: null, instrumentName: ' ' })).toEqual(['day-missing day', 'instrument-missing instrumentName'])
  })

  it('with nothing but its prefilled day and instrument is none; 0 mA is a reading', () => {
    expect(isTestGiven(testEntry(NOTHING))).toBe(false)
    expect(isTestGiven(testEntry({ ...NOTHING, sections: [section(0)] }))).toBe(true)
    expect(isTestGiven(testEntry({ ...NOTHING, gridVoltage: volts(0) }))).toBe(true)
    expect(isTestGiven(testEntry({ ...NOTHING, shorts: true }))).toBe(true)
  })
})

describe('its instant', () => {
  it('is now when it was done today, and the end of its day when it was done before, in the shop’s zone', () => {
    const now = new Date('2031-05-07T02:00:00Z')
    expect(testedInstant(TODAY, now, 'America/New_York')).toBe(now)
    expect(testedInstant('2031-05-05' as Day, now, 'America/New_York').toISOString()).toBe('2031-05-06T03:59:59.000Z')
  })
})

describe('the sentence of a fault', () => {
  it('names the row, the field in the shop’s words and the type', () => {
    const fault = { code: 'one-section-only', field: 'secondPlateMilliamps', designation: 'EL34', row: 2 } as const
    expect(tubeFaultText(fault, wordsFor('UK'))).toBe(
      'Row 3: Anode current, section 2: type EL34 has one section. Leave it empty, or check the type.',
    )
  })
})
