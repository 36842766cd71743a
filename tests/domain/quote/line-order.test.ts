import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { orderChanges, type PlacedLine } from '@/lib/domain/quote/line-order'
import { LINE_KINDS, type LineKind } from '@/lib/domain/quote/quote'

const line = (id: string, kind: LineKind = 'part'): PlacedLine => ({ id, kind, label: id.toUpperCase() })
const word = (kind: LineKind) => `${kind}s`
const told = (before: readonly PlacedLine[], after: readonly PlacedLine[]) => orderChanges(before, after, word)

describe('the order of a quote’s lines', () => {
  const [a, b, c] = [line('a'), line('b'), line('c')]

  it('is told as before and after when one was moved', () => {
    expect(told([a, b, c], [c, a, b])).toEqual([{ label: 'Order of parts', from: 'A, B, C', to: 'C, A, B' }])
  })

  it('is not told of lines that came or went', () => {
    expect(told([a, b, c], [a, c])).toEqual([])
    expect(told([a, c], [{ kind: 'part', label: 'NEW' }, a, b, c])).toEqual([])
  })

  it('of what stayed it is told beside lines that came and went', () => {
    const fresh: PlacedLine = { kind: 'part', label: 'NEW' }
    expect(told([a, b, c], [c, fresh, a])).toEqual([{ label: 'Order of parts', from: 'A, C', to: 'C, A' }])
  })

  it('is each kind’s own: how kinds stand among each other is nothing', () => {
    const tube = line('t', 'tube')
    expect(told([a, tube, b], [tube, a, b])).toEqual([])
    expect(told([a, tube, b], [b, tube, a])).toEqual([{ label: 'Order of parts', from: 'A, B', to: 'B, A' }])
  })

  it('a renamed line is the same line, under the name of its time', () => {
    expect(told([a, b], [b, { ...a, label: 'Alpha' }])).toEqual([
      { label: 'Order of parts', from: 'A, B', to: 'B, Alpha' },
    ])
  })
})

test('a kind is told of exactly when what is on both stands in another order', () => {
  const lines = ['a', 'b', 'c', 'd', 'e', 'f'].map((id, index) => line(id, LINE_KINDS[index % 2]))
  const some = fc.shuffledSubarray(lines)
  fc.assert(
    fc.property(some, some, (before, after) => {
      const common = (kind: LineKind, of: readonly PlacedLine[], other: readonly PlacedLine[]) =>
        of.filter((each) => each.kind === kind && other.includes(each)).map(({ id }) => id)
      const moved = LINE_KINDS.filter(
        (kind) => common(kind, before, after).join() !== common(kind, after, before).join(),
      )
      expect(told(before, after).map(({ label }) => label)).toEqual(moved.map((kind) => `Order of ${word(kind)}`))
    }),
  )
})
