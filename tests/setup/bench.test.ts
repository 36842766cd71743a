import { expect, test } from 'vitest'
import { type Figure, lineOf } from '@/lib/setup/bench'

const seconds: Figure = { figure: 'second start', value: 2, unit: 's', reference: 4, goal: 10, better: 'lower' }

test('2 s against 4 s with a goal of at most 10 s is half, and met', () => {
  expect(JSON.parse(lineOf('start', seconds))).toEqual({
    bench: 'start',
    figure: 'second start',
    value: 2,
    unit: 's',
    reference: 4,
    ratio: 0.5,
    goal: 10,
    met: true,
  })
})

test('10.1 s misses a goal of 10 s, and 10 s meets it', () => {
  expect(JSON.parse(lineOf('start', { ...seconds, value: 10.1 })).met).toBe(false)
  expect(JSON.parse(lineOf('start', { ...seconds, value: 10 })).met).toBe(true)
})

test('where more is better, 9 a second misses a goal of 10', () => {
  expect(JSON.parse(lineOf('x', { ...seconds, value: 9, better: 'higher' })).met).toBe(false)
})

test('without a goal or a reference nothing is claimed', () => {
  const line = JSON.parse(lineOf('start', { ...seconds, reference: null, goal: null }))
  expect([line.ratio, line.met]).toEqual([null, null])
})

test('a figure that is no number is refused, not printed', () => {
  expect(() => lineOf('start', { ...seconds, value: Number.NaN })).toThrow(
    'second start is NaN s, which is no measurement',
  )
})
