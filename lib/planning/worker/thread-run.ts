/** One computation in a thread of its own: started when its turn comes, and always settled. */
import { randomUUID } from 'node:crypto'
import { join } from 'node:path'
import { Worker } from 'node:worker_threads'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { WorkerMessage, WorkerStart } from './planning-worker'
import type { PlanningFault, PlanningRun } from './run'
import type { Progress } from './task'
import type { TaskName } from './tasks'

/** How long a cancelled computation has to end by itself. */
const GRACE_MILLISECONDS = 5000
/** An error may carry a whole program in its message. */
const LONGEST_MESSAGE = 500

export class ThreadRun {
  readonly id = randomUUID()
  state: 'waiting' | 'running' | 'ended' = 'waiting'
  private progress: Progress | null = null
  private readonly stop = new SharedArrayBuffer(4)
  private worker: Worker | null = null
  private settle: (result: Result<unknown, PlanningFault>) => void = () => {}
  private readonly result = new Promise<Result<unknown, PlanningFault>>((settle) => {
    this.settle = settle
  })

  constructor(
    private readonly kind: TaskName,
    private readonly input: unknown,
    private readonly onProgress: (progress: Progress) => void,
  ) {}

  asRun(): PlanningRun {
    return {
      id: this.id,
      kind: this.kind,
      progress: () => this.progress,
      state: () => this.state,
      cancel: () => this.cancel(),
      result: this.result,
    }
  }

  /** Settles when the thread is gone. */
  start(): Promise<unknown> {
    this.state = 'running'
    const start: WorkerStart = { kind: this.kind, input: this.input, stop: this.stop }
    const worker = new Worker(workerFile(), {
      execArgv: [],
      workerData: start,
      stdout: true,
      stderr: true,
    })
    this.worker = worker
    worker.stdout.resume()
    worker.stderr.resume()
    worker.on('message', (message: WorkerMessage) => this.hear(message))
    worker.on('error', ({ name, message }) =>
      this.end(fail({ kind: 'failed', name, message: message.slice(0, LONGEST_MESSAGE) })),
    )
    return new Promise((gone) => {
      worker.on('exit', (code) => {
        this.end(fail({ kind: 'failed', name: 'thread-ended', message: `The thread ended with code ${code}` }))
        gone(code)
      })
    })
  }

  private hear(message: WorkerMessage): void {
    if (message.type === 'progress') {
      this.progress = message.progress
      this.onProgress(message.progress)
    } else if (message.type === 'done') this.end(ok(message.output))
    else this.end(fail({ kind: 'failed', name: message.name, message: message.message }))
  }

  private cancel(): void {
    if (this.state === 'ended') return
    Atomics.store(new Int32Array(this.stop), 0, 1)
    const waited = this.state === 'waiting'
    if (waited) this.end(fail({ kind: 'cancelled' }))
    else setTimeout(() => this.worker?.terminate(), GRACE_MILLISECONDS).unref()
  }

  /** The first outcome counts; after a cancel there is only one. */
  private end(result: Result<unknown, PlanningFault>): void {
    if (this.state === 'ended') return
    this.state = 'ended'
    const cancelled = Atomics.load(new Int32Array(this.stop), 0) === 1
    this.settle(cancelled ? fail({ kind: 'cancelled' }) : result)
    // All has been said; the turn of the next comes sooner.
    this.worker?.terminate()
  }
}

/** Written so that the bundler does not take the path for one of its own. */
function workerFile(): string {
  return join(/* turbopackIgnore: true */ process.cwd(), 'lib', 'planning', 'worker', 'start-worker.mjs')
}
