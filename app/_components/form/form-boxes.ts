/** The boxes of a form in the browser: what is changed in them, and what an answer of the server does to them. */
import type { FormState, FormValues } from './form-state'

type Box = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement

function boxesOf(form: HTMLFormElement): Box[] {
  return [...form.elements].filter(
    (each): each is Box =>
      (each instanceof HTMLInputElement && each.type !== 'hidden' && each.type !== 'submit') ||
      each instanceof HTMLSelectElement ||
      each instanceof HTMLTextAreaElement,
  )
}

const isTick = (box: Box): box is HTMLInputElement => box instanceof HTMLInputElement && box.type === 'checkbox'

/**
 * Takes the answered value into every box that still holds what was sent. What
 * was typed while the answer was under way stays. A pass phrase is never
 * answered, so its box is emptied.
 */
export function settleBoxes(form: HTMLFormElement, sent: FormValues, answered: FormValues): void {
  for (const box of boxesOf(form)) {
    const next = answered[box.name]
    if (isTick(box)) {
      if (box.checked === (sent[box.name] !== undefined)) box.checked = next === 'on'
    } else if (box.type === 'password') {
      if (box.value === (sent[box.name] ?? '')) box.value = next ?? ''
    } else if (next !== undefined && next !== box.value && box.value === sent[box.name]) {
      box.value = next
    }
  }
}

function changed(box: Box): boolean {
  if (isTick(box)) return box.checked !== box.defaultChecked
  if (!(box instanceof HTMLSelectElement)) return box.value !== box.defaultValue
  const start = [...box.options].findIndex(({ value }) => value === box.dataset.start)
  return box.selectedIndex !== Math.max(start, 0)
}

export const anyChanged = (form: HTMLFormElement): boolean => boxesOf(form).some(changed)

/** In the order of the page. False when there is no such box. */
export function focusFirstOf(
  form: HTMLFormElement,
  wanted: (name: string) => boolean,
  where: 'first' | 'last-row' = 'first',
): boolean {
  const all = boxesOf(form).filter((box) => box.name !== '' && wanted(box.name))
  const row = (box: Box) => box.name.split('.').slice(0, 2).join('.')
  const last = all.at(-1)
  const box = where === 'first' ? all[0] : all.find((each) => last && row(each) === row(last))
  box?.focus()
  return box !== undefined
}

/** A refusal is gone to; anything else is only brought into view. */
export function showFormMessage(form: HTMLFormElement, status: FormState['status']): void {
  const message = form.querySelector<HTMLElement>('.form-message')
  if (status === 'refused') message?.focus()
  else message?.scrollIntoView({ block: 'nearest' })
}

/** Long texts changed before React took the page over: it sets those boxes back to what the server drew. */
export function earlyTexts(formId: string): FormValues {
  const form = typeof document === 'undefined' ? null : document.getElementById(formId)
  const texts = [...(form?.querySelectorAll('textarea') ?? [])].filter((box) => box.value !== box.defaultValue)
  return Object.fromEntries(texts.map((box) => [box.name, box.value]))
}

export function putBack(form: HTMLFormElement, texts: FormValues): void {
  for (const box of form.querySelectorAll('textarea')) box.value = texts[box.name] ?? box.value
}
