import { describe, expect, test } from 'vitest'
import {
  boxMilliampsText,
  gridText,
  plotDescription,
  plotFaultText,
  plotLegend,
  plotNotes,
  plotTitle,
} from '@/lib/domain/plot/plot-text'
import { wordsFor } from '@/lib/domain/words'
import { plotReading, sheet } from './plot-fixture'

const us = wordsFor('US')
const load = { ohms: 4200, arrangement: 'push-pull', tubesPerSide: 1 } as const

describe('read aloud', () => {
  test('axes, every grid voltage, rating, each point with its box, and the load are said', () => {
    const drawn = sheet({ load })
    const said = plotDescription(drawn, us)
    for (const { gridVolts } of drawn.whole.curves) expect(said).toContain(gridText(gridVolts).replace(' V', ''))
    expect(said).toContain('0 to 600 V')
    expect(said).toContain('Screen 391 V to cathode')
    expect(said).toContain('30 W, design-maximum')
    expect(said).toContain('V4 idles at 425 V and 35.2 mA')
    expect(said).toContain('from 34.1 to 36.3 mA')
    expect(said).toContain('V5 idles at 425 V and 38.9 mA')
    expect(said).toContain('4200 Ω plate to plate')
  })

  test('ends of a box are rounded outwards: 34.144 to 36.256 mA is “34.1 to 36.3 mA”', () => {
    const [point] = sheet().points
    expect(point && boxMilliampsText(point)).toBe('34.1 to 36.3 mA')
  })

  test('an estimate is said to be “about”', () => {
    const reading = plotReading('V4')
    const plateAmps = { ...reading.idle.plateAmps, estimate: true }
    const said = plotDescription(sheet({ readings: [{ ...reading, idle: { ...reading.idle, plateAmps } }] }), us)
    expect(said).toContain('about 35.2 mA')
  })

  test('the anode in British words', () => {
    expect(plotTitle(sheet(), wordsFor('UK'))).toBe('6L6GC, average anode characteristics')
    expect(plotDescription(sheet(), wordsFor('UK'))).not.toContain('plate')
  })
})

describe('legend and notes', () => {
  const kinds = (given: Parameters<typeof sheet>[0]) => plotLegend(sheet(given), us).map(({ kind }) => kind)

  test('the legend names what is drawn and nothing else', () => {
    expect(kinds({})).toEqual(['curve', 'point', 'box', 'heat'])
    expect(kinds({ rating: null, load })).toEqual(['curve', 'point', 'box', 'load'])
    const both = [plotReading('V4', { when: 'before' }), plotReading('V4', { when: 'after' })]
    expect(kinds({ readings: both })).toEqual(['curve', 'point-before', 'point', 'box', 'heat'])
  })

  test('points are readings, curves a model: always said, with how good it is', () => {
    expect(plotNotes(sheet(), us)[0]).toMatch(/points are readings.*model.*±\u00a08\u00a0%/)
  })

  test('borrowed curves and assumed screen volts are said', () => {
    const notes = plotNotes(
      sheet({ typeId: 'KT77', designation: 'KT77', readings: [plotReading('V4', { screenToCathode: null })] }),
      us,
    )
    expect(notes.join(' ')).toContain('those of EL34')
    expect(notes.join(' ')).toContain('No screen volts were read')
  })

  test('a type without curves: the sentence names it', () => {
    expect(plotFaultText({ code: 'no-curves', designation: 'GU50' }, us)).toContain('GU50')
  })
})
