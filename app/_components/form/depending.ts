/** A schema that depends on what stands in another box of the same form: the decimals of an amount on its currency. */
import * as z from 'zod/mini'
import { after, refuseAt } from './fields'

export type Typed = Readonly<Record<string, unknown>>

export const depending = <Schema extends z.ZodMiniType>(schemaFor: (typed: Typed) => Schema) =>
  after(z.looseObject({}), (typed, context): z.output<Schema> => {
    const parsed = schemaFor(typed).safeParse(typed)
    if (parsed.success) return parsed.data
    for (const { message, path } of parsed.error.issues) refuseAt(context, message, path)
    return z.NEVER
  })

export const typedText = (typed: Typed, name: string): string => {
  const value = typed[name]
  return typeof value === 'string' ? value.trim() : ''
}
