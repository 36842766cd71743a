/** Writes a new customer down, or corrects one. */
import type { Customer, CustomerDetails } from '@/lib/domain/customer/customer'
import { changesBetween, type Shown, shown } from '@/lib/domain/history/changes'
import type { Result } from '@/lib/domain/result'
import { createCustomer, findCustomer, saveCustomer } from '@/lib/store/customer'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

const customerShown = (customer: CustomerDetails): Shown =>
  shown([
    ['Name', customer.name],
    ['Phone', customer.phone],
    ['E-mail', customer.email],
    ['Address', customer.address],
    ['Preferred contact', customer.preferredContact],
    ['Note', customer.note],
  ])

/** Inside a larger step, such as taking in a job for somebody new. */
export async function addCustomer(tx: Tx, { actor, now }: Step, details: CustomerDetails): Promise<string> {
  const id = await createCustomer(tx, details)
  const changes = changesBetween(shown([]), customerShown(details))
  await writeHistory(tx, {
    at: now,
    person: actor.name,
    subject: 'customer',
    subjectId: id,
    did: 'Customer written down',
    changes,
    version: 1,
  })
  return id
}

export function keepCustomer(
  step: Step,
  input: { readonly id: string | null; readonly version: number; readonly details: CustomerDetails },
): Promise<Result<string, StepFault>> {
  const { id, version, details } = input
  return refusing(() =>
    inTransaction((tx) => (id === null ? addCustomer(tx, step, details) : correct(tx, step, id, version, details))),
  )
}

async function correct(
  tx: Tx,
  { actor, now }: Step,
  id: string,
  version: number,
  details: CustomerDetails,
): Promise<string> {
  const before: Customer | null = await findCustomer(id, tx)
  if (!before) return refuse({ code: 'not-found', what: 'This customer' })
  if (!(await saveCustomer(tx, id, version, details))) return refuse(await stale(tx, 'customer', id, version))
  const changes = changesBetween(customerShown(before), customerShown(details))
  await writeHistory(tx, {
    at: now,
    person: actor.name,
    subject: 'customer',
    subjectId: id,
    did: 'Customer corrected',
    changes,
    version: version + 1,
  })
  return id
}
