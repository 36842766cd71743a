/** Where each step stands, in a few words. */

import type { Job } from '@/lib/domain/job/job'
import { CHECK_IDS } from '@/lib/domain/safety/check'
import { capital, type Words } from '@/lib/domain/words'
import type { JobProgress } from '@/lib/store/job-progress'
import type { StepTab } from './steps'

const counted = (count: number, one: string, many: string) => (count === 1 ? `1 ${one}` : `${count} ${many}`)

export function stepTabs(job: Job, progress: JobProgress, words: Words): StepTab[] {
  const { sockets, readingsBefore, readingsAfter, quote, workOrders, safetyFailed, safetySigned } = progress
  const safetyOpen = CHECK_IDS.length - safetySigned
  const collected = job.collectedAt !== null
  const safety =
    safetyFailed > 0
      ? `${counted(safetyFailed, 'line fails', 'lines fail')}`
      : safetyOpen > 0
        ? counted(safetyOpen, 'line open', 'lines open')
        : safetySigned > 0
          ? 'signed'
          : 'not begun'
  return [
    { path: '', text: 'Counter', stands: `taken in by ${job.takenInBy}`, done: true },
    {
      path: 'amplifier',
      text: 'Amplifier',
      stands: sockets === 0 ? 'no sockets noted' : counted(sockets, 'socket', 'sockets'),
      done: sockets > 0,
    },
    {
      path: 'bench',
      text: 'Bench',
      stands: readingsBefore === 0 ? 'no readings yet' : counted(readingsBefore, 'set of readings', 'sets of readings'),
      done: readingsBefore > 0,
    },
    {
      path: 'tubes',
      text: capital(words.tubes),
      stands: quote && quote.tubes > 0 ? `${quote.tubes} chosen` : 'none chosen',
      done: (quote?.tubes ?? 0) > 0,
    },
    {
      path: 'quote',
      text: 'Quote',
      stands: quote ? `${quote.number}, revision ${quote.revision}: ${quote.state}` : 'none yet',
      done: quote?.state === 'accepted' || quote?.state === 'declined',
    },
    {
      path: 'work',
      text: 'Work order',
      stands: workOrders === 0 ? 'not printed' : counted(workOrders, 'print', 'prints'),
      done: workOrders > 0,
    },
    {
      path: 'safety',
      text: 'After',
      stands: `${readingsAfter === 0 ? 'no readings yet' : counted(readingsAfter, 'set of readings', 'sets of readings')}; ${safety}`,
      done: safetySigned > 0 && safetyOpen === 0 && safetyFailed === 0,
    },
    { path: 'pickup', text: 'Pickup', stands: collected ? `to ${job.collectedBy}` : 'not yet', done: collected },
  ]
}
