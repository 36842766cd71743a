/** Test points and currents: 6L6GC, 250 V plate and screen, −14 V grid: 72 mA, 5 mA, 6 mA/V (receiving tube handbook, class A1, one tube). */
import { describe, expect, it } from 'vitest'
import { catalogueModel } from '@/lib/domain/model/catalogue-model'
import { predictedIdle } from '@/lib/domain/model/predicted-idle'
import { money } from '@/lib/domain/money'
import { proposedFromStock, stockProposalFaultText } from '@/lib/domain/stock/proposed-from-stock'
import { carriedRecord, testRecordOf } from '@/lib/domain/stock/test-record-of'
import type { StockedTube, Tube, TubeTest } from '@/lib/domain/stock/tube'
import { NOTHING_FURTHER } from '@/lib/domain/stock/tube-further'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { amps, volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { section } from '@/tests/support/stocked-shop'

const NOW = new Date('2031-05-20T15:00:00Z')

const tube = (over: Partial<Tube> = {}): Tube => ({
  ...{ id: 'id-1', mark: 'T-0001', designation: '6L6GC', family: '6L6', condition: 'used-tested', price: money(4000) },
  ...{ acquired: '', construction: '', location: '', cost: null, whereabouts: 'in-stock', version: 1 },
  ...{ hold: '', heldForJob: null, heldForJobNumber: null, heldByQuoteId: null, heldUntil: null },
  further: NOTHING_FURTHER,
  createdAt: NOW,
  ...over,
})

const test = (over: Partial<TubeTest> = {}): TubeTest => ({
  ...{ id: 'test-1', testedAt: NOW, testedBy: 'Ines', instrumentName: 'Bench tester 1', calibratedOn: null },
  ...{ shorts: false, leakage: '', gas: '', noise: '', microphony: '', note: '' },
  ...{ plateVoltage: volts(250), screenVoltage: volts(250), gridVoltage: volts(-14), sections: [section(72, 6)] },
  ...over,
})

const stocked = (over: Partial<StockedTube> = {}): StockedTube => ({
  tube: tube(),
  test: test(),
  shortsFoundAt: null,
  ...over,
})
const propose = (over: Partial<StockedTube>) => proposedFromStock(stocked(over), HANDBOOK_ONLY, NOW)

describe('a test as the model takes it', () => {
  it('72 mA is good to ± 4 % and 6 mA/V to ± 10 % at 95 %, so 1.44 mA and 0.3 mA/V standard', () => {
    const record = testRecordOf(test())
    expect(record?.plateCurrent.value).toBe(0.072)
    expect(record?.plateCurrent.standard).toBeCloseTo(0.00144, 12)
    expect(record?.transconductance?.standard).toBeCloseTo(0.0003, 12)
    expect(record?.screenCurrent).toBeNull()
    expect(record?.point).toEqual({ plateToCathode: 250, screenToCathode: 250, gridToCathode: -14 })
  })

  it.each([
    ['with a short', { shorts: true }],
    ['without plate volts', { plateVoltage: null }],
    ['without a current', { sections: [section(null)] }],
    ['with a current of 0 mA', { sections: [section(0)] }],
  ])('tells nothing %s', (_name, over) => {
    expect(testRecordOf(test(over))).toBeNull()
  })
})

describe('a test carried to a socket far from its test point', () => {
  const model = catalogueModel('6L6', HANDBOOK_ONLY)
  if (!model.ok) throw new Error('6L6')
  const record = testRecordOf(test())
  if (!record) throw new Error('no record')

  it('72 mA, good to 2 %, is there as good as 2 % and the curves’ own share together, by the root of squares', () => {
    const { plateCurrent } = carriedRecord(record, model.value)
    expect(model.value.share).toBeGreaterThan(0.01)
    expect(plateCurrent.standard / plateCurrent.value).toBeCloseTo(Math.sqrt(0.02 ** 2 + model.value.share ** 2), 12)
    expect(plateCurrent.value).toBe(0.072)
  })

  it('leaves its transconductance at the test point, and 5 mA of screen current good to 35 %', () => {
    const own = { ...record, screenCurrent: { value: amps(0.005), standard: amps(0.0001) } }
    const carried = carriedRecord(own, model.value)
    expect(carried.transconductance).toBeNull()
    expect(carried.screenCurrent?.standard).toBeCloseTo(0.005 * Math.hypot(0.02, 0.35), 12)
  })
})

describe('a stocked tube proposed for a socket', () => {
  it('draws at its test point what it drew in the test', () => {
    const found = propose({ test: test({ sections: [section(60, 5.4)] }) })
    if (!found.ok || found.value.kind !== 'individual') throw new Error('not proposed')
    const point = { plateToCathode: volts(250), screenToCathode: volts(250), gridToCathode: volts(-14) }
    const { plate } = predictedIdle(found.value.tube, point)
    expect(plate.value).toBeCloseTo(amps(0.06), 5)
    expect(found.value.mark).toBe('T-0001')
  })

  it('says for which job it is held, and that it is free again once the hold has lapsed', () => {
    const held = { hold: 'held', heldForJob: 'j', heldForJobNumber: '1047-0' } as const
    const found = propose({ tube: tube({ ...held, heldUntil: null }) })
    expect(found.ok && found.value).toMatchObject({ mark: 'T-0001 (held for job 1047-0)' })
    const lapsed = propose({ tube: tube({ ...held, heldUntil: new Date(NOW.getTime() - 1) }) })
    expect(lapsed.ok && lapsed.value).toMatchObject({ mark: 'T-0001' })
  })

  it.each([
    ['sold', { tube: tube({ whereabouts: 'sold' }) }, 'T-0001 is sold.'],
    ['a reject', { tube: tube({ condition: 'reject' }) }, 'T-0001 is marked as reject.'],
    ['shorted', { shortsFoundAt: NOW }, 'T-0001 showed a short at its last test.'],
    ['not tested', { test: null }, 'T-0001 has no test that tells its strength. Test it, or ask by its type.'],
    [
      'a preamp tube',
      { tube: tube({ designation: '12AX7' }) },
      'T-0001 is a 12AX7, of which no curves as an output valve are known.',
    ],
    [
      'five times as strong as its type',
      { test: test({ sections: [section(360)] }) },
      'The test of T-0001 cannot be used: it differs from a 6L6GC by more than a factor of four.',
    ],
    [
      'tested at cutoff',
      { test: test({ gridVoltage: volts(-200) }) },
      'The test of T-0001 cannot be used: a 6L6GC carries next to no current at its test point.',
    ],
  ])('is refused when %s', (_name, over, sentence) => {
    const found = propose(over as Partial<StockedTube>)
    expect(!found.ok && stockProposalFaultText(found.fault, wordsFor('UK'))).toBe(sentence)
  })
})
