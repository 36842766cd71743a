import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  addressOf,
  answered,
  CANNOT_TELL,
  cannotTell,
  forgotten,
  hasSeen,
  seenOf,
  stockAddress,
  TEXTS,
} from '@/app/stock/identify/seen-query'
import { choicesOf, OBSERVATION_KEYS } from '@/lib/domain/identify/knowledge/observations'
import { NOTHING_SEEN, type Seen } from '@/lib/domain/identify/seen'
import { stockEntry } from '@/lib/domain/identify/stock-entry'

const queryOf = (address: string) => Object.fromEntries(new URL(address, 'http://bench').searchParams)

const told: fc.Arbitrary<Seen> = fc
  .record({
    print: fc.constantFrom('', '6V6GT', 'EL34/6CA7', '6П6С & co'),
    date: fc.constantFrom('', '188-5-32'),
    answers: fc.array(fc.tuple(fc.constantFrom(...OBSERVATION_KEYS), fc.nat()), { maxLength: 6 }),
    without: fc.constantFrom([], ['print'] as const, ['date'] as const),
  })
  .map(({ print, date, answers, without }) => ({
    ...NOTHING_SEEN,
    ...{ print, date, skipped: [...without] },
    choices: Object.fromEntries(answers.map(([key, at]) => [key, choicesOf(key)[at % choicesOf(key).length]])),
  }))

test('what was told comes back from its address', () => {
  fc.assert(
    fc.property(told, (seen) => {
      expect(seenOf(queryOf(addressOf(seen)))).toEqual(seen)
    }),
  )
})

test('an address typed by hand: what is no answer is left out, long text is cut, a name given twice is taken once', () => {
  const seen = seenOf({ bulb: 'T-99', base: ['octal', 'noval'], print: 'x'.repeat(500), odd: '1', constructor: 'y' })
  expect(seen).toEqual({ ...NOTHING_SEEN, print: 'x'.repeat(60), choices: { base: 'octal' } })
})

test('answer, cannot be told, clear: each replaces the one before', () => {
  const octal = answered(NOTHING_SEEN, 'base', 'octal')
  expect(octal.choices).toEqual({ base: 'octal' })
  const cannot = cannotTell(octal, 'base')
  expect([cannot.choices, cannot.skipped]).toEqual([{}, ['base']])
  expect(queryOf(addressOf(cannot))).toEqual({ base: CANNOT_TELL })
  expect(answered(cannot, 'base', 'noval')).toMatchObject({ choices: { base: 'noval' }, skipped: [] })
  expect(hasSeen(forgotten(octal, 'base'))).toBe(false)
})

test('the address of the stock form carries the type and each box that has something', () => {
  const seen: Seen = {
    ...{ print: '6V6GT/G', codes: '188', date: '5-32', other: 'red print', skipped: [] },
    choices: { bulb: 'metal', getterShape: 'd', getterPlace: 'top', base: 'octal', baseMaterial: 'brown' },
  }
  expect(queryOf(stockAddress('6V6', stockEntry(seen, { plate: 'plate' })))).toEqual({
    designation: '6V6',
    bulbShape: 'Metal can',
    baseLook: 'Brown, a little glittering',
    labelText: '6V6GT/G',
    codes: '188; 5-32',
    getters: 'Getter place: at the top; getter holder: D-shaped wire',
    construction: 'Red print; base: octal: key in the middle, eight places',
  })
})

test('everything told at once fits the boxes of the stock form', () => {
  for (const at of [0, 1, 2, 3]) {
    const choices = Object.fromEntries(OBSERVATION_KEYS.map((key) => [key, choicesOf(key)[at % choicesOf(key).length]]))
    const entry = stockEntry({ ...NOTHING_SEEN, choices, other: 'x'.repeat(TEXTS.other) }, { plate: 'anode' })
    const { construction, ...boxes } = entry
    expect(construction.length).toBeLessThanOrEqual(300)
    for (const text of Object.values(boxes)) expect(text.length).toBeLessThanOrEqual(200)
  }
})
