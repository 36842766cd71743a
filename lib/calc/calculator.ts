/** One calculator: what it takes, an example of that, and what it answers. */
import { z } from 'zod'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { InputFault } from './input/input-fault'
import { schemaFaults } from './input/schema-faults'

export type Faults = readonly [InputFault, ...InputFault[]]

export type Calculator = {
  readonly schema: () => object
  readonly example: unknown
  readonly answer: (given: unknown) => Result<object, Faults>
}

type Definition<Schema extends z.ZodType> = {
  readonly title: string
  readonly input: Schema
  readonly example: z.input<Schema>
  readonly calculate: (given: z.output<Schema>) => Result<object, Faults>
}

export function faultsOf(faults: readonly InputFault[]): Faults {
  const [first, ...others] = faults
  if (!first) throw new Error('An input refused without a fault')
  return [first, ...others]
}

export function calculator<Schema extends z.ZodType>(definition: Definition<Schema>): Calculator {
  const { title, input, example, calculate } = definition
  return {
    schema: () => {
      const { $schema, ...schema } = z.toJSONSchema(input, { target: 'draft-2020-12', io: 'input' })
      return { $schema, title, ...schema }
    },
    example,
    answer: (given) => {
      const parsed = input.safeParse(given)
      return parsed.success ? calculate(parsed.data) : fail(faultsOf(schemaFaults(parsed.error, given)))
    },
  }
}

/** All of them, or every fault that any of them has. */
export function together<T>(results: readonly Result<T, readonly InputFault[]>[]): Result<readonly T[], Faults> {
  const faults = results.flatMap((one) => (one.ok ? [] : one.fault))
  if (faults.length > 0) return fail(faultsOf(faults))
  return ok(results.flatMap((one) => (one.ok ? [one.value] : [])))
}
