/**
 * The long computations by name, each loaded in the worker when it is asked
 * for. Input and output cross threads by structured clone: plain values.
 */
export const TASKS = {
  pair: async () => (await import('../pair/pair-task')).pairTask,
  quads: async () => (await import('../quads/quads-task')).quadsTask,
  sets: async () => (await import('../sets/sets-task')).setsTask,
  share: async () => (await import('../sharing/share-task')).shareTask,
  /** Two that fail, to see what a failure looks like from outside. */
  'throw-error': async () => (await import('./failing-tasks')).throwError,
  'end-thread': async () => (await import('./failing-tasks')).endThread,
} as const

export type TaskName = keyof typeof TASKS
type TaskOf<Name extends TaskName> = Awaited<ReturnType<(typeof TASKS)[Name]>>
export type TaskInput<Name extends TaskName> = Parameters<TaskOf<Name>>[0]
export type TaskOutput<Name extends TaskName> = Awaited<ReturnType<TaskOf<Name>>>

export const isTask = (name: string): name is TaskName => Object.hasOwn(TASKS, name)
