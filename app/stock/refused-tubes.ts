/** From what a step refused to the form again, each sentence beside its own field. */
import { type FormState, type FormValues, refusedForm } from '@/app/_components/form/form-state'
import type { Shop } from '@/lib/domain/shop/shop'
import { type TubeFault, tubeFaultText } from '@/lib/domain/stock/tube-fault'
import { wordsFor } from '@/lib/domain/words'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'

const fieldName = ({ row, field }: TubeFault): string => (row === null ? field : `rows.${row}.${field}`)

export function refusedTubes(before: FormState, values: FormValues, fault: StepFault, shop: Shop): FormState {
  if (fault.code !== 'tubes-refused') return refusedForm(before, values, stepFaultText(fault, shop))
  const words = wordsFor(shop.words)
  const faults: Record<string, string> = {}
  for (const each of fault.faults) faults[fieldName(each)] ??= tubeFaultText(each, words)
  const sentences = Object.values(faults)
  const count = sentences.length === 1 ? 'one field needs' : `${sentences.length} fields need`
  return refusedForm(before, values, `Not saved: ${count} another look. ${sentences[0]}`, faults)
}
