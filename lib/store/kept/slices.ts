/** Long work in slices: between two of them everybody else who waits for the process has a turn. */
import { performance } from 'node:perf_hooks'
import { setImmediate } from 'node:timers/promises'

const SLICE_MILLISECONDS = 40
/** The clock is looked at once in so many steps. */
const STEPS = 64

export class Slices {
  private began = performance.now()
  private steps = 0

  /** After each small step; nothing to wait for until the slice is over. */
  pause(): Promise<void> | undefined {
    this.steps += 1
    if (this.steps % STEPS !== 0 || performance.now() - this.began < SLICE_MILLISECONDS) return undefined
    return this.yield()
  }

  async yield(): Promise<void> {
    await setImmediate()
    this.began = performance.now()
  }
}
