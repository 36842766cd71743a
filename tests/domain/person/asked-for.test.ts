import { expect, test } from 'vitest'
import { safeReturn } from '@/lib/domain/person/asked-for'

test.each(['/jobs/1019-9/safety', '/papers/cmabc123', '/stock', '/types/6V6'])(
  '%s is a page of the shop and is led back to',
  (path) => {
    expect(safeReturn(path)).toBe(path)
  },
)

test.each([
  'https://example.org/',
  '//example.org/jobs',
  '/\\example.org',
  '/jobs/../../example',
  '/jobs/1019-9?did=accepted',
  '/jobs\n/x',
  '/sign-in',
  '',
  null,
  undefined,
])('%j leads to the day instead', (path) => {
  expect(safeReturn(path)).toBe('/')
})
