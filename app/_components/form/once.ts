/**
 * The same sheet sent twice is taken once. Without JavaScript a second press reaches
 * the server while the first is still at work, and the page behind the back button can be
 * sent again: both are given the answer of the first.
 *
 * A sheet is known by the mark its page drew into it and by every box of it; with one box
 * changed it is another sheet. A refused one is forgotten at once. Marks live in this
 * process: one server serves a shop.
 */
import 'server-only'
import { createHash, randomUUID } from 'node:crypto'
import type { FormState } from './form-state'
import { typedValues } from './form-values'

const KEPT_MILLISECONDS = 30 * 60_000
const MOST_KEPT = 1000

type Answer = { readonly answer: Promise<FormState>; readonly until: number }

const answers = new Map<string, Answer>()

/** For the hidden box `once` of a page that has a new sheet. */
export const onceMark = (): string => randomUUID()

function keyOf(who: string, form: FormData): string | null {
  const values = typedValues(form)
  if (!values.once) return null
  return createHash('sha256')
    .update(JSON.stringify([who, Object.entries(values).sort()]))
    .digest('base64')
}

export function once(who: string, form: FormData, work: () => Promise<FormState>): Promise<FormState> {
  const key = keyOf(who, form)
  if (key === null) return work()
  const kept = answers.get(key)
  if (kept && kept.until > Date.now()) return kept.answer
  const answer = work()
  forgetOld()
  answers.set(key, { answer, until: Date.now() + KEPT_MILLISECONDS })
  const forget = () => answers.delete(key)
  answer.then(
    ({ status }) => status !== 'saved' && forget(),
    (thrown) => !isRedirect(thrown) && forget(),
  )
  return answer
}

/** Saved, and on to another page: that is how the framework says it. */
const isRedirect = (thrown: unknown): boolean =>
  String((thrown as { digest?: unknown } | null)?.digest ?? '').startsWith('NEXT_REDIRECT')

/** In the order they came in, so the first are the oldest. */
function forgetOld(): void {
  for (const [key, { until }] of answers)
    if (until < Date.now() || answers.size >= MOST_KEPT) answers.delete(key)
    else break
}
