import { unstable_rethrow } from 'next/navigation'
import type { FormState } from './form-state'
import { typedValues } from './form-values'

type Action = (before: FormState, form: FormData) => Promise<FormState>

const SENTENCE =
  'This may not be saved: the server gave no answer. What you typed is still here; try again. If it goes on, look at the sheet in a second window before you leave this one.'

/**
 * A broken line or a fault on the server must not take the page, and what was
 * typed, away. On the server the action itself is handed on, because the plain
 * form posts to it.
 */
export function surviving(action: Action): Action {
  if (typeof window === 'undefined') return action
  return async (before, form) => {
    try {
      return await action(before, form)
    } catch (error) {
      unstable_rethrow(error)
      console.error('A form was not answered', error)
      return {
        ...before,
        status: 'refused',
        attempt: before.attempt + 1,
        message: SENTENCE,
        values: typedValues(form),
        faults: {},
      }
    }
  }
}
