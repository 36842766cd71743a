/** Who may write readings on this job now; the sentence stands where the form would, so nobody types in vain. */
import type { Job } from '@/lib/domain/job/job'
import { isClosed, jobStateWord } from '@/lib/domain/job/job-state'
import { type Actor, dutyNeeds, mayDo } from '@/lib/domain/person/role'

/** Empty: they may. */
export function readingsBarredText({ state }: Pick<Job, 'state'>, actor: Actor): string {
  if (isClosed(state)) return `The job is “${jobStateWord(state)}”: its readings stand as they were handed over.`
  return mayDo(actor, 'bench-work') ? '' : dutyNeeds('bench-work')
}
