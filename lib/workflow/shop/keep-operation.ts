/** The shop's list of usual operations: written down, corrected, put in order, retired. */

import { changesBetween, type Shown, shown } from '@/lib/domain/history/changes'
import { formatMoney } from '@/lib/domain/money'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import {
  createOperation,
  listOperations,
  type Operation,
  type OperationDetails,
  updateOperation,
} from '@/lib/store/operation'
import { findShop } from '@/lib/store/shop'
import { allowed, refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export type OperationInput = { readonly id: string | null; readonly details: Omit<OperationDetails, 'place'> }

export async function keepOperation(step: Step, { id, details }: OperationInput): Promise<Result<string, StepFault>> {
  const may = allowed(step, 'keep-shop')
  if (!may.ok) return may
  return refusing(() => inTransaction((tx) => (id === null ? add(tx, step, details) : correct(tx, step, id, details))))
}

async function add(tx: Tx, step: Step, details: OperationInput['details']): Promise<string> {
  const all = await listOperations(true, tx)
  const place = Math.max(-1, ...all.map((operation) => operation.place)) + 1
  const id = await createOperation(tx, { ...details, place })
  await note(tx, step, id, 'Operation written down', changesBetween(shown([]), await shownIn(tx, details)))
  return id
}

async function correct(tx: Tx, step: Step, id: string, details: OperationInput['details']): Promise<string> {
  const before = (await listOperations(true, tx)).find((operation) => operation.id === id)
  if (!before) return refuse({ code: 'not-found', what: 'This operation' })
  await updateOperation(tx, id, { ...details, place: before.place })
  const did = before.active && !details.active ? 'Operation retired' : 'Operation corrected'
  await note(tx, step, id, did, changesBetween(await shownIn(tx, before), await shownIn(tx, details)))
  return id
}

export type Move = 'up' | 'down'

/** One place up or down among those in use. At the end of the list nothing happens. */
export async function moveOperation(
  step: Step,
  { id, move }: { readonly id: string; readonly move: Move },
): Promise<Result<null, StepFault>> {
  const may = allowed(step, 'keep-shop')
  if (!may.ok) return may
  return refusing(() =>
    inTransaction(async (tx) => {
      const inUse = await listOperations(false, tx)
      const at = inUse.findIndex((operation) => operation.id === id)
      const [here, there] = [inUse[at], inUse[move === 'up' ? at - 1 : at + 1]]
      if (!here) return refuse({ code: 'not-found', what: 'This operation' })
      if (there) await renumber(tx, swapped(inUse, here, there))
      return null
    }),
  )
}

const swapped = (all: readonly Operation[], here: Operation, there: Operation): Operation[] =>
  all.map((each) => (each === here ? there : each === there ? here : each))

/** Places are given anew, as two may have had the same one. */
async function renumber(tx: Tx, operations: readonly Operation[]): Promise<void> {
  for (const [place, { id, ...details }] of operations.entries())
    if (details.place !== place) await updateOperation(tx, id, { ...details, place })
}

async function shownIn(tx: Tx, details: OperationInput['details']): Promise<Shown> {
  const shop = await findShop(tx)
  if (!shop) throw new Error('An operation was kept before the shop was opened')
  return operationShown(details, shop)
}

export function operationShown({ name, milliHours, flatPrice, active }: OperationInput['details'], shop: Shop): Shown {
  const price =
    flatPrice === null
      ? `${(milliHours ?? 0) / 1000} h`
      : formatMoney(flatPrice, shop.currency, wordsFor(shop.words).locale)
  return shown([
    ['Name', name],
    ['Charged', price],
    ['In use', active ? 'yes' : 'no, retired'],
  ])
}

function note(tx: Tx, { actor, now }: Step, id: string, did: string, changes: ReturnType<typeof changesBetween>) {
  return writeHistory(tx, { at: now, person: actor.name, subject: 'operation', subjectId: id, did, changes })
}
