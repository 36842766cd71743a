import type { CalculatorName } from '@/lib/calc/calculators'
import { loadCalculator } from '@/lib/calc/calculators'
import type { InputFault } from '@/lib/calc/input/input-fault'

/** The answer as a reader of the JSON gets it; a refusal fails the test with its sentences. */
// biome-ignore lint/suspicious/noExplicitAny: what is printed is JSON, and is read as JSON here.
export async function answer(name: CalculatorName, given: unknown): Promise<any> {
  const result = (await loadCalculator(name)).answer(given)
  if (!result.ok) throw new Error(JSON.stringify(result.fault, null, 2))
  return JSON.parse(JSON.stringify(result.value))
}

export async function faults(name: CalculatorName, given: unknown): Promise<readonly InputFault[]> {
  const result = (await loadCalculator(name)).answer(given)
  if (result.ok) throw new Error(`Not refused: ${JSON.stringify(given)}`)
  return result.fault
}
