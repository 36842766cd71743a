/** Writes a lot of unmarked tubes down or corrects it; takes one out of it and marks it. */
import { changesBetween, shown } from '@/lib/domain/history/changes'
import { formatMoney, type Money } from '@/lib/domain/money'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { lotShown, type TubeLotDetails } from '@/lib/domain/stock/tube-lot'
import { wordsFor } from '@/lib/domain/words'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { createLot, findLot, saveLot } from '@/lib/store/tube-lot'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { shopOf } from './add-tube-test'
import { addTube, freeMark, nextMark } from './keep-tube'

export type LotInput = { readonly id: string | null; readonly version: number; readonly details: TubeLotDetails }

const moneyIn = (shop: Shop) => (amount: Money) => formatMoney(amount, shop.currency, wordsFor(shop.words).locale)

export function keepLot(step: Step, { id, version, details }: LotInput): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const show = moneyIn(await shopOf(tx))
      const note = { at: step.now, person: step.actor.name, subject: 'lot' } as const
      if (id === null) {
        const subjectId = await createLot(tx, details)
        const changes = changesBetween(shown([]), lotShown(details, show))
        await writeHistory(tx, { ...note, subjectId, did: 'Lot written down', changes, version: 1 })
        return subjectId
      }
      const before = await findLot(id, tx)
      if (!before) return refuse({ code: 'not-found', what: 'This lot' })
      if (!(await saveLot(tx, id, version, details))) return refuse(await stale(tx, 'lot', id, version))
      const changes = changesBetween(lotShown(before, show), lotShown(details, show))
      await writeHistory(tx, { ...note, subjectId: id, did: 'Lot corrected', changes, version: version + 1 })
      return id
    }),
  )
}

export type FromLot = {
  readonly lotId: string
  /** Empty: the next free mark. */
  readonly mark: string
}

/** Gives the id of the tube that now has a mark of its own. */
export function takeFromLot(step: Step, { lotId, mark: typed }: FromLot): Promise<Result<string, StepFault>> {
  return refusing(() => inTransaction((tx) => takeOne(tx, step, lotId, typed)))
}

async function takeOne(tx: Tx, step: Step, lotId: string, typed: string): Promise<string> {
  const lot = await findLot(lotId, tx)
  if (!lot) return refuse({ code: 'not-found', what: 'This lot' })
  if (lot.count < 1) return refuse({ code: 'lot-empty', designation: lot.designation })
  const free = typed.trim() === '' ? null : await freeMark(tx, typed, null)
  if (free && !free.ok) return refuse({ code: 'tubes-refused', faults: [free.fault] })
  const mark = free ? free.value : await nextMark(tx)
  const { id: _id, version, ...details } = lot
  if (!(await saveLot(tx, lotId, version, { ...details, count: lot.count - 1 })))
    return refuse(await stale(tx, 'lot', lotId, version))
  const { designation, condition, cost, price, location, note } = lot
  const tube = { mark, designation, condition, cost, price, location, acquired: note, construction: '' }
  const tubeId = await addTube(tx, step, await shopOf(tx), tube, null)
  const changes = [
    { label: 'Count', from: String(lot.count), to: String(lot.count - 1) },
    { label: 'Taken out and marked', from: '', to: mark },
  ]
  const entry = { at: step.now, person: step.actor.name, subject: 'lot', subjectId: lotId } as const
  await writeHistory(tx, { ...entry, did: 'One taken out', changes, version: version + 1 })
  return tubeId
}
