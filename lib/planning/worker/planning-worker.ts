/** The thread's side of `planning-run.ts`: one computation, its progress, and its outcome. */
import { parentPort, workerData } from 'node:worker_threads'
import type { Progress, Task } from './task'
import { isTask, TASKS } from './tasks'

export type WorkerStart = {
  readonly kind: string
  readonly input: unknown
  /** One 32-bit number in shared memory: 1 asks for an end. */
  readonly stop: SharedArrayBuffer
}

export type WorkerMessage =
  | { readonly type: 'progress'; readonly progress: Progress }
  | { readonly type: 'done'; readonly output: unknown }
  | { readonly type: 'failed'; readonly name: string; readonly message: string }

/** The integer solver's errors carry its whole source. */
const LONGEST_MESSAGE = 500

const tell = (message: WorkerMessage): void => parentPort?.postMessage(message)

async function compute({ kind, input, stop }: WorkerStart): Promise<void> {
  const flag = new Int32Array(stop)
  if (!isTask(kind)) throw new Error(`No computation is called ${kind}`)
  const task = (await TASKS[kind]()) as Task<unknown, unknown>
  const output = await task(input, {
    report: (progress) => tell({ type: 'progress', progress }),
    cancelled: () => Atomics.load(flag, 0) === 1,
  })
  tell({ type: 'done', output })
}

try {
  await compute(workerData as WorkerStart)
} catch (error) {
  const { name, message } = error instanceof Error ? error : new Error(String(error))
  tell({ type: 'failed', name, message: message.slice(0, LONGEST_MESSAGE) })
}
