/** A job's state: word and shape, the shape telling whose move it is. */
import { type JobState, jobStateWord } from '@/lib/domain/job/job-state'

const SHAPES: Record<JobState, { shape: string; tone?: 'good' | 'warn' }> = {
  received: { shape: '▷' },
  'on-bench': { shape: '▣' },
  'waiting-for-answer': { shape: '◇' },
  'waiting-for-parts': { shape: '◫' },
  testing: { shape: '◎' },
  ready: { shape: '●', tone: 'good' },
  collected: { shape: '■', tone: 'good' },
  'returned-unrepaired': { shape: '▨', tone: 'warn' },
  uncollected: { shape: '△', tone: 'warn' },
}

export function StateTag({ state }: { state: JobState }) {
  const { shape, tone } = SHAPES[state]
  return (
    <span className="tag" data-shape={shape} data-tone={tone}>
      {jobStateWord(state)}
    </span>
  )
}
