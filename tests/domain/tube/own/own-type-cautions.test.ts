import { describe, expect, test } from 'vitest'
import { ownTypeCautions } from '@/lib/domain/tube/own/own-type-cautions'
import type { OwnTypeEntry } from '@/lib/domain/tube/own/own-type-entry'
import { ownTypeCautionText } from '@/lib/domain/tube/own/own-type-text'
import { wordsFor } from '@/lib/domain/words'
import { ownEntry, ownRow, rectifierEntry, triodeEntry } from './own-type-fixture'

const told = (entry: OwnTypeEntry) => ownTypeCautions(entry).map((one) => ownTypeCautionText(one, wordsFor('US')))
const pins = { 4: 'h', 5: 'h' }
const triodeRow = (mu: number) =>
  ownRow({
    ...{ plateVolts: 250, screenVolts: null, gridVolts: -2, plateMilliamps: 1.2, screenMilliamps: null },
    ...{ gmMilliampsPerVolt: 1.6, plateResistanceKilohms: 62.5, mu },
  })

describe('figures that are odd', () => {
  test('none of a sound entry is', () => {
    expect(told(ownEntry())).toEqual([])
    expect(told(rectifierEntry({ pins }))).toEqual([])
  })

  test('1.6 mA/V times 62.5 kΩ is 100: µ 110 passes, µ 112 is told', () => {
    expect(told(triodeEntry({ pins, rows: [triodeRow(110)] }))).toEqual([])
    expect(told(triodeEntry({ pins, rows: [triodeRow(112)] }))).toEqual([
      'Operating point 1: transconductance times plate resistance is 100.0, but the amplification factor given is 112. One of the three is doubtful.',
    ])
  })

  test('400 V at 66 mA is 26.4 W: above 25 W by more than 5 %; at 65 mA it is not', () => {
    const at = (plateMilliamps: number) => told(ownEntry({ rows: [ownRow({ plateVolts: 400, plateMilliamps })] }))
    expect(at(65)).toEqual([])
    expect(at(66)).toEqual(['Operating point 1 dissipates 26.4 W at the plate, above the rating of 25.0 W given.'])
  })

  test('250 V at 20 mA is 5 W on a screen rated 4 W', () => {
    expect(told(ownEntry({ rows: [ownRow({ screenMilliamps: 20 })] }))[0]).toBe(
      'Operating point 1 dissipates 5.0 W at the screen, above the rating of 4.0 W given.',
    )
  })

  test('450 A for 450 mA is noticed, and 0.45 mA taken for A', () => {
    expect(told(ownEntry({ heaterAmps: 9 }))[0]).toMatch(/^The heater would take 56\.7 W;/)
    expect(told(ownEntry({ heaterAmps: 0.00045 }))[0]).toMatch(/^The heater would take 0\.003 W;/)
  })

  test('missing ratings and pins are said, a rectifier has no plate rating to miss', () => {
    const codes = (entry: OwnTypeEntry) => ownTypeCautions(entry).map(({ code }) => code)
    expect(codes(ownEntry({ limits: {}, pins: null }))).toEqual(['no-plate-rating', 'no-screen-rating', 'no-pins'])
    expect(codes(triodeEntry({ limits: {}, pins }))).toEqual(['no-plate-rating'])
    expect(codes(rectifierEntry({ limits: {}, pins }))).toEqual([])
  })
})
