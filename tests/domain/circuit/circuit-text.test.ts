import { describe, expect, test } from 'vitest'
import { ampCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { assumptionText } from '@/lib/domain/circuit/amp/assumption-text'
import { whatIfCautionText } from '@/lib/domain/circuit/change/cautions/what-if-caution-text'
import { whatIf } from '@/lib/domain/circuit/change/what-if'
import {
  circuitFaultText,
  resistanceText,
  socketList,
  solveFaultText,
  trimFaultText,
  whatIfFaultText,
} from '@/lib/domain/circuit/circuit-text'
import { wordsFor } from '@/lib/domain/words'
import { circuitGiven, circuitOf, facts, setOf, trueStage } from './amp/read-amp'
import { given, refused, solved } from './solved'

const [US, UK] = [wordsFor('US'), wordsFor('UK')]

describe('words', () => {
  test('sockets and ohms as a bench says them', () => {
    expect(['V4'].map((one) => socketList([one]))).toEqual(['V4'])
    expect(socketList(['V4', 'V5', 'V6'])).toBe('V4, V5 and V6')
    expect([470, 4700, 220_000, 1e6].map(resistanceText)).toEqual(['470 Ω', '4.7 kΩ', '220 kΩ', '1 MΩ'])
  })

  test('tube, plate and line follow the locale', () => {
    const fault = { code: 'no-curves', designation: '9Z9', socket: 'V4' } as const
    expect(circuitFaultText(fault, US)).toContain('output tube')
    expect(circuitFaultText(fault, UK)).toContain('output valve')
    expect(assumptionText({ code: 'all-follows-mains' }, US)).toContain('follow the line')
    expect(assumptionText({ code: 'all-follows-mains' }, UK)).toContain('follow the mains')
  })
})

describe('the offending value stands in the sentence', () => {
  test('of a solve, a trim, a change', () => {
    const range = { part: 'Rk', quantity: 'resistance', value: -3, unit: 'Ω', lowest: 0, highest: 1e9 } as const
    expect(solveFaultText({ code: 'value-out-of-range', ...range }, US)).toBe(
      'Rk: resistance is -3 Ω. It must be from 0 Ω to 1000000000 Ω.',
    )
    expect(trimFaultText({ code: 'target-out-of-reach', target: 19.5, most: 12.25, unit: 'W' }, US)).toBe(
      'No setting reaches 19.5 W: the hottest one gives 12.3 W.',
    )
    expect(whatIfFaultText({ code: 'mains-out-of-range', volts: 20, lowest: 115, highest: 345 }, UK)).toContain(
      '20.0 V',
    )
  })

  test('of a tube unlike its type: what was read and what it would draw', () => {
    const stage = trueStage()
    const set = setOf(stage, solved(stage), { gridVolts: -5 })
    const text = circuitFaultText(refused(ampCircuit(circuitGiven(stage, { set }))), US)
    expect(text).toMatch(/^V4: [\d.]+ mA was read where 6L6GC would draw \d+ mA at the volts there\./)
  })
})

test('every assumption and caution that turns up has a whole sentence in both locales', () => {
  const stage = trueStage()
  const set = setOf(stage, solved(stage), { screenVolts: null, screenDropVolts: null })
  const circuit = circuitOf(stage, { facts: facts({ rectifierType: '5U4G' }), set })
  const found = given(
    whatIf(circuit, {
      tubes: { all: { kind: 'type', designation: '6V6GT' } },
      rectifier: '',
      mainsFactor: 1.15,
      pulled: 'V4',
    }),
  )
  const sentences = [US, UK].flatMap((words) => [
    ...found.assumptions.map((one) => assumptionText(one, words)),
    ...found.cautions.map((one) => whatIfCautionText(one, words)),
  ])
  expect(sentences.length).toBeGreaterThan(20)
  for (const one of sentences) {
    expect(one).toMatch(/^\S.*\.$/)
    expect(one).not.toMatch(/undefined|NaN|\[object/)
  }
})
