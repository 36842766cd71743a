/** Writes down how many hours a tube ran in a socket it sat in, as far as anybody knows. */
import type { Result } from '@/lib/domain/result'
import { inTransaction } from '@/lib/store/database'
import { saveFittingHours } from '@/lib/store/fitting'
import { writeHistory } from '@/lib/store/history'
import { listFittingsOf } from '@/lib/store/tube'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export type FittingHours = { readonly tubeId: string; readonly fittingId: string; readonly hours: number | null }

const shown = (hours: number | null): string => (hours === null ? '' : `${hours} h`)

export function keepFittingHours(
  step: Step,
  { tubeId, fittingId, hours }: FittingHours,
): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const fitting = (await listFittingsOf(tubeId, tx)).find(({ id }) => id === fittingId)
      if (!fitting) return refuse({ code: 'not-found', what: 'This socket' })
      if (fitting.hours === hours) return tubeId
      await saveFittingHours(tx, fittingId, hours)
      const label = `Hours in ${fitting.position} of the ${fitting.ampName}`
      const changes = [{ label, from: shown(fitting.hours), to: shown(hours) }]
      const note = { at: step.now, person: step.actor.name, subject: 'tube', subjectId: tubeId } as const
      await writeHistory(tx, { ...note, did: 'Hours written down', changes })
      return tubeId
    }),
  )
}
