/** A long computation as seen from outside its thread. */
import type { Result } from '@/lib/domain/result'
import type { Progress } from './task'
import type { TaskName } from './tasks'

export type PlanningFault =
  | { readonly kind: 'cancelled' }
  /** `name` is the error's, or 'thread-ended' when the thread went without a word. */
  | { readonly kind: 'failed'; readonly name: string; readonly message: string }

export type PlanningRun<Output = unknown> = {
  readonly id: string
  readonly kind: TaskName
  /** Latest told; null while it waits for its turn or has told nothing. */
  readonly progress: () => Progress | null
  readonly state: () => 'waiting' | 'running' | 'ended'
  readonly cancel: () => void
  readonly result: Promise<Result<Output, PlanningFault>>
}
