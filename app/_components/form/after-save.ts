/**
 * A page that shows its form again after a save gives it a new start by its
 * address: the form's key is taken from `seen`. It is not taken from the saved
 * version, because without JavaScript a refused late save is drawn by a page
 * that already knows the newer version: with another key the answer would be lost.
 */
export const afterSave = (path: string, now: Date): string => `${path}?seen=${now.getTime()}`

export function startKey({ seen }: Readonly<Record<string, string | string[] | undefined>>): string {
  return typeof seen === 'string' ? seen : 'first'
}
