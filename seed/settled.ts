/** The demo does nothing that a step refuses: a refusal here is a mistake in the demo, told in the step's own words. */
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'

export async function settled<T>(shop: Shop, what: string, step: Promise<Result<T, StepFault>>): Promise<T> {
  const result = await step
  if (result.ok) return result.value
  throw new Error(`Demo shop, ${what}: ${stepFaultText(result.fault, shop)}`)
}
