/** Pins are counted clockwise from the key or gap, seen from below (EIA basing; from memory in the notes used). */
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { basePins } from '@/app/_components/tube-drawings/base-drawing'
import { ChoiceDrawing, isDrawn } from '@/app/_components/tube-drawings/choice-drawing'
import { choicesOf, OBSERVATION_KEYS } from '@/lib/domain/identify/knowledge/observations'

const drawn = (
  observation: 'bulb' | 'base' | 'getterShape' | 'getterPlace' | 'plates',
  choice: string,
  title?: string,
) => renderToStaticMarkup(<ChoiceDrawing {...{ observation, choice, title }} />)

describe.each([
  ['octal', 8],
  ['loctal', 8],
  ['noval', 9],
  ['novar', 9],
  ['miniature-7', 7],
  ['four-pin', 4],
])('%s base', (base, count) => {
  test(`${count} pins on a circle, clockwise`, () => {
    const pins = basePins(base).map(([x, y]) => [x - 36, y - 36] as const)
    expect(pins).toHaveLength(count)
    const radii = pins.map(([x, y]) => Math.hypot(x, y))
    expect(Math.max(...radii) - Math.min(...radii)).toBeLessThan(0.03)
    // The cross product of neighbours is positive when the turn is clockwise on paper (y runs down).
    for (const [at, [x, y]] of pins.slice(0, -1).entries()) {
      const [nextX = 0, nextY = 0] = pins[at + 1] ?? []
      expect(x * nextY - y * nextX).toBeGreaterThan(0)
    }
  })
})

test('the gap of noval and 7-pin and the key of the octal lie between the last pin and the first, at the bottom', () => {
  for (const base of ['octal', 'noval', 'miniature-7']) {
    const pins = basePins(base)
    const [first, last] = [pins[0], pins.at(-1)]
    expect((first?.[0] ?? 0) + (last?.[0] ?? 0)).toBeCloseTo(72, 1)
    expect(first?.[0]).toBeLessThan(36)
    expect(first?.[1]).toBeGreaterThan(36)
  }
})

test('every answer about bulb, getter holder, getter place and plates has a drawing; "another base" has none', () => {
  for (const key of OBSERVATION_KEYS.filter(isDrawn))
    for (const choice of choicesOf(key)) {
      const markup = renderToStaticMarkup(<ChoiceDrawing observation={key} choice={choice} />)
      expect([choice, markup.startsWith('<svg')]).toEqual([choice, choice !== 'other-base'])
      expect(markup).not.toMatch(/NaN|undefined/)
    }
})

test('with a title it is a picture that is read aloud, without one it is passed over', () => {
  expect(drawn('bulb', 'ST-14', 'Shouldered bulb')).toMatch(/role="img" aria-label="Shouldered bulb"/)
  expect(drawn('bulb', 'ST-14')).toContain('aria-hidden="true"')
})

test('bulbs are drawn to one scale: a T-9 is 28.6 mm, a T-6½ 20.6 mm, an ST-16 51 mm, within 1 mm', () => {
  const width = (choice: string) => {
    const numbers = [...(drawn('bulb', choice).match(/<path d="([^"]+)"/)?.[1] ?? '').matchAll(/M ([\d.]+) /g)]
    return 2 * (36 - Number(numbers[0]?.[1]))
  }
  expect(Math.abs(width('T-9') - 28.6)).toBeLessThan(1)
  expect(Math.abs(width('T-6½') - 20.6)).toBeLessThan(1)
  // Shouldered ones begin at their neck, 0.62 of the greatest width.
  expect(Math.abs(width('ST-16') / 0.62 - 51)).toBeLessThan(1)
})
