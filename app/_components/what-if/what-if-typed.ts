/**
 * What is typed into the what-if boxes: as text by name, the same in the form, in the address
 * and in the browser. An empty box is left as it is, never zero.
 */
export type WhatIfTyped = Readonly<Record<string, string>>

/** "silicon": the rectifier box says so, as an empty box means "as it is". */
export const SILICON = 'silicon'

const PLAIN_BOXES = ['type', 'grid', 'cathode', 'wall', 'rectifier', 'pulled'] as const

const MARK = 'mark.'
export const markBox = (position: string): string => `${MARK}${position}`

const isBox = (name: string): boolean => name.startsWith(MARK) || (PLAIN_BOXES as readonly string[]).includes(name)

const LONGEST = 40

/** Only what was typed; from an address or a form. */
export function whatIfTyped(entries: Iterable<readonly [string, unknown]>): WhatIfTyped {
  const typed: Record<string, string> = {}
  for (const [name, value] of entries) {
    const text = typeof value === 'string' ? value.trim().slice(0, LONGEST) : ''
    if (text !== '' && isBox(name)) typed[name] = text
  }
  return typed
}

/** By socket position. */
export const marksTyped = (typed: WhatIfTyped): readonly (readonly [position: string, mark: string])[] =>
  Object.entries(typed).flatMap(([name, mark]) => (name.startsWith(MARK) ? [[name.slice(MARK.length), mark]] : []))
