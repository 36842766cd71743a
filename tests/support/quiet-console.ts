/** An error written to the console that no test asked for fails the test that caused it. */
import { afterEach, beforeEach, expect, type MockInstance, vi } from 'vitest'

let errors: MockInstance<typeof console.error>

beforeEach(() => {
  errors = vi.spyOn(console, 'error')
})

afterEach(() => {
  const calls = errors.mock.calls.map((call) => call.map(String).join(' '))
  errors.mockRestore()
  expect(calls, 'console.error was called').toEqual([])
})
