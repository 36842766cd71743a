/**
 * Long computations off the request: each in a thread of its own, a few at a
 * time and the others in turn, with progress, cancel and a result that never
 * rejects. What goes wrong in the thread comes back as a named fault.
 *
 * The thread runs the TypeScript sources, so that the page bundler has no part
 * in it: they are found from the folder the program was started in.
 */
import type { PlanningRun } from './worker/run'
import type { Progress } from './worker/task'
import type { TaskInput, TaskName, TaskOutput } from './worker/tasks'
import { ThreadRun } from './worker/thread-run'

export type { PlanningFault, PlanningRun } from './worker/run'

/** One core computes, the other serves. */
const AT_ONCE = 1
/** Ended runs kept to be asked about. */
const KEPT = 20

/** Screens may be bundled apart; they share one list all the same. */
const SHARED = Symbol.for('benchglow.planning-runs')
type Shared = { readonly runs: Map<string, ThreadRun>; running: number; readonly waiting: ThreadRun[] }
const everywhere = globalThis as { [SHARED]?: Shared }
const shared: Shared = everywhere[SHARED] ?? { runs: new Map(), running: 0, waiting: [] }
everywhere[SHARED] = shared

export function startPlanning<Name extends TaskName>(
  kind: Name,
  input: TaskInput<Name>,
  onProgress: (progress: Progress) => void = () => {},
): PlanningRun<TaskOutput<Name>> {
  const run = new ThreadRun(kind, input, onProgress)
  shared.runs.set(run.id, run)
  shared.waiting.push(run)
  forgetOldest()
  startNext()
  return run.asRun() as PlanningRun<TaskOutput<Name>>
}

/** null when it is not known here: ended long ago, or from before a restart. */
export function planningRun(id: string): PlanningRun | null {
  return shared.runs.get(id)?.asRun() ?? null
}

function startNext(): void {
  while (shared.running < AT_ONCE) {
    const next = shared.waiting.shift()
    if (!next) return
    if (next.state === 'ended') continue
    shared.running += 1
    next.start().finally(() => {
      shared.running -= 1
      startNext()
    })
  }
}

function forgetOldest(): void {
  const ended = [...shared.runs.values()].filter(({ state }) => state === 'ended')
  for (const { id } of ended.slice(0, Math.max(0, ended.length - KEPT))) shared.runs.delete(id)
}
