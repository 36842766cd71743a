/** From what the step refused to the sheet again, each sentence beside its own box. */
import { type FormState, type FormValues, refusedForm } from '@/app/_components/form/form-state'
import { faultsMessage } from '@/app/_components/form/read-form'
import type { Shop } from '@/lib/domain/shop/shop'
import type { OwnTypeFault } from '@/lib/domain/tube/own/own-type-faults'
import { ownTypeFaultText } from '@/lib/domain/tube/own/own-type-text'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'

function boxOf(fault: OwnTypeFault): string {
  if (fault.code === 'no-such-pin') return `pin${fault.pin}`
  return 'row' in fault ? `rows.${fault.row}.${fault.field}` : fault.field
}

export function refusedType(before: FormState, values: FormValues, fault: StepFault, shop: Shop): FormState {
  if (fault.code === 'type-withdrawn')
    return refusedForm(before, values, `Not saved. ${stepFaultText(fault, shop)}`, {
      designation: stepFaultText(fault, shop),
    })
  if (fault.code !== 'own-type-refused') return refusedForm(before, values, `Not saved. ${stepFaultText(fault, shop)}`)
  const faults: Record<string, string> = {}
  for (const each of fault.faults) faults[boxOf(each)] ??= ownTypeFaultText(each)
  return refusedForm(before, values, faultsMessage(faults), faults)
}
