/** Writes a part down or corrects it; changes its count by hand, with the reason. */
import { changesBetween, shown } from '@/lib/domain/history/changes'
import { formatMoney, type Money } from '@/lib/domain/money'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { type PartDetails, partShown } from '@/lib/domain/stock/part'
import { wordsFor } from '@/lib/domain/words'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { createPart, findPart, savePart } from '@/lib/store/part'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { shopOf } from './add-tube-test'

export type PartInput = { readonly id: string | null; readonly version: number; readonly details: PartDetails }

const moneyIn = (shop: Shop) => (amount: Money) => formatMoney(amount, shop.currency, wordsFor(shop.words).locale)

export function keepPart(step: Step, { id, version, details }: PartInput): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const show = moneyIn(await shopOf(tx))
      const note = { at: step.now, person: step.actor.name, subject: 'part' } as const
      if (id === null) {
        const subjectId = await createPart(tx, details)
        const changes = changesBetween(shown([]), partShown(details, show))
        await writeHistory(tx, { ...note, subjectId, did: 'Part written down', changes, version: 1 })
        return subjectId
      }
      const before = await findPart(id, tx)
      if (!before) return refuse({ code: 'not-found', what: 'This part' })
      if (!(await savePart(tx, id, version, details))) return refuse(await stale(tx, 'part', id, version))
      const changes = changesBetween(partShown(before, show), partShown(details, show))
      await writeHistory(tx, { ...note, subjectId: id, did: 'Part corrected', changes, version: version + 1 })
      return id
    }),
  )
}

export type CountChange = {
  readonly partId: string
  /** Negative: taken away. */
  readonly by: number
  readonly reason: string
}

/** Counts on from what is there now, whatever was saved meanwhile. */
export function changePartCount(step: Step, { partId, by, reason }: CountChange): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const part = await findPart(partId, tx)
      if (!part) return refuse({ code: 'not-found', what: 'This part' })
      const { id, version, ...details } = part
      const count = part.count + by
      if (count < 0) return refuse({ code: 'count-below-zero', what: part.name, count: part.count, by })
      if (!(await savePart(tx, id, version, { ...details, count }))) return refuse(await stale(tx, 'part', id, version))
      const changes = [
        { label: 'Count', from: String(part.count), to: String(count) },
        { label: 'Reason', from: '', to: reason },
      ]
      const did = by < 0 ? `${-by} taken away` : `${by} put in`
      const note = { at: step.now, person: step.actor.name, subject: 'part', subjectId: id, did, changes } as const
      await writeHistory(tx, { ...note, version: version + 1 })
      return id
    }),
  )
}
