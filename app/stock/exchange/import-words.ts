import type { Import } from '@/lib/store/import'

/** Of one that is not cut short. */
const WORDS: Readonly<Record<Import['state'], string>> = {
  chosen: 'not taken in yet',
  running: 'under way',
  done: 'taken in',
  cancelled: 'cancelled',
  failed: 'not taken in',
  undoing: 'being undone',
  undone: 'undone',
}

export const importStateWord = ({ state }: Pick<Import, 'state'>, isCutShort: boolean): string =>
  isCutShort ? 'cut short' : WORDS[state]
