/** What a long computation is given by the thread it runs in, and what it may tell on the way. */
export type Progress = {
  /** Kebab-case name of the step, known to the computation and to who shows it. */
  readonly stage: string
  /** Figures of the step, such as a gap or a count. */
  readonly figures: Readonly<Record<string, number>>
}

export type TaskContext = {
  readonly report: (progress: Progress) => void
  /** Asked between steps, and within a step of the integer solver. */
  readonly cancelled: () => boolean
}

export type Task<Input, Output> = (input: Input, context: TaskContext) => Output | Promise<Output>
