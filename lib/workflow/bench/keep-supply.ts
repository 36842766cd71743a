/** Keeps what is known of the supplies behind the output tubes of an amplifier. */
import type { SupplyFacts } from '@/lib/domain/amp/supply-facts'
import { supplyShown } from '@/lib/domain/amp/supply-shown'
import { changesBetween } from '@/lib/domain/history/changes'
import type { Result } from '@/lib/domain/result'
import { wordsFor } from '@/lib/domain/words'
import { findAmp } from '@/lib/store/amp'
import { findSupply, saveSupply } from '@/lib/store/amp-supply'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { shopOf } from '@/lib/workflow/stock/add-tube-test'

export type SupplyToKeep = { readonly ampId: string; readonly version: number; readonly facts: SupplyFacts }

/** Gives the version after it. */
export function keepSupply(step: Step, { ampId, version, facts }: SupplyToKeep): Promise<Result<number, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      if (!(await findAmp(ampId, tx))) return refuse({ code: 'not-found', what: 'This amplifier' })
      const before = await findSupply(ampId, tx)
      if (!(await saveSupply(tx, ampId, version, facts))) return refuse(await stale(tx, 'amp', ampId, version))
      const words = wordsFor((await shopOf(tx)).words)
      const changes = changesBetween(supplyShown(before, words), supplyShown(facts, words))
      const note = { at: step.now, person: step.actor.name, subject: 'amp', subjectId: ampId } as const
      await writeHistory(tx, { ...note, did: 'Supply and bias saved', changes, version: version + 1 })
      return version + 1
    }),
  )
}
