/**
 * What a save changed, in words a reader of the history understands. The same
 * list tells a second person what happened while they were typing.
 */
export type Change = { readonly label: string; readonly from: string; readonly to: string }

/** Shown text by label, in the order of the sheet: "V3 cathode resistor" → "470 Ω". */
export type Shown = ReadonlyMap<string, string>

export const shown = (entries: Iterable<readonly [string, string | null | undefined]>): Shown =>
  new Map([...entries].map(([label, text]) => [label, text ?? '']))

export function changesBetween(before: Shown, after: Shown): Change[] {
  const labels = new Set([...before.keys(), ...after.keys()])
  return [...labels].flatMap((label) => {
    const from = before.get(label) ?? ''
    const to = after.get(label) ?? ''
    return from === to ? [] : [{ label, from, to }]
  })
}

export function changeSentence({ label, from, to }: Change): string {
  if (from === '') return `${label}: ${to}`
  return to === '' ? `${label}: ${from} removed` : `${label}: ${from} → ${to}`
}
