import type { Import } from '@/lib/store/import'

const WORDS: Readonly<Record<Import['state'], string>> = {
  chosen: 'not taken in yet',
  running: 'under way',
  done: 'taken in',
  cancelled: 'cancelled, nothing taken in',
  failed: 'nothing taken in',
  undone: 'undone',
}

export const importStateWord = (state: Import['state']): string => WORDS[state]
