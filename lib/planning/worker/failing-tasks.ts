/** Computations that go wrong on purpose: one says so, the other takes its thread along. */
import type { Task } from './task'

export const throwError: Task<{ readonly message: string }, never> = ({ message }) => {
  throw new RangeError(message)
}

export const endThread: Task<{ readonly code: number }, never> = ({ code }) => {
  process.exit(code)
}
