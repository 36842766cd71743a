import type { SetSize } from '@/lib/planning/sets/sets-plan'

/** "Pair 6L6, T-0101": the first mark tells sets of a type apart. */
export const setName = (size: SetSize, family: string, tubes: readonly { readonly mark: string }[]): string =>
  `${size === 2 ? 'Pair' : 'Quad'} ${family}, ${tubes[0]?.mark ?? ''}`
