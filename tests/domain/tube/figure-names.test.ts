import { expect, test } from 'vitest'
import { limitName, rowName } from '@/lib/domain/tube/figure-names'
import { HANDBOOK } from '@/lib/domain/tube/handbook'
import type { LimitKey, RowKey } from '@/lib/domain/tube/handbook-type'
import { cardSources } from '@/lib/domain/tube/type-sources'
import { wordsFor } from '@/lib/domain/words'

const [us, uk] = [wordsFor('US'), wordsFor('UK')]

test('every figure of the handbook has a name, and a unit where it needs one', () => {
  const limits = HANDBOOK.flatMap(({ variants, otherSection }) =>
    [...variants.map(({ ratings }) => ratings), otherSection].flatMap((ratings) =>
      ratings && typeof ratings === 'object' ? (Object.keys(ratings.limits) as LimitKey[]) : [],
    ),
  )
  const rows = HANDBOOK.flatMap((type) => type.rows.flatMap(({ figures }) => Object.keys(figures) as RowKey[]))
  const names = [
    ...[...new Set(limits)].map((key) => limitName(key, us)),
    ...[...new Set(rows)].map((key) => rowName(key, us)),
  ]
  expect(names.length).toBeGreaterThan(50)
  for (const { label, unit } of names) {
    expect(label).toMatch(/^[A-Z][^%]{2,}$/)
    expect(unit !== '' || /factor|gain/.test(label)).toBe(true)
  }
})

test('a British shop reads anode, and a source resistance names its voltage', () => {
  expect(limitName('plateWatts', uk)).toEqual({ label: 'Anode dissipation', unit: 'W' })
  expect(rowName('plateToPlateKilohms', uk)).toEqual({ label: 'Load, anode to anode', unit: 'kΩ' })
  expect(limitName('sourceOhmsPerPlateAt450Volts', us)).toEqual({
    label: 'Source resistance per plate at 450 V, at least',
    unit: 'Ω',
  })
})

test('every figure of a card has a source that stands in its list', () => {
  for (const type of HANDBOOK) {
    const { list, numberOf } = cardSources(type)
    const used = type.rows.flatMap(({ figures }) => Object.values(figures)).map((figure) => numberOf(figure[1]))
    for (const number of used) expect(list[number - 1]?.number, type.id).toBe(number)
    expect(list.every(({ text }) => text.length > 10)).toBe(true)
  }
})
