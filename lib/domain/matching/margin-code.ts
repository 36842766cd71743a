/** Margins that the set called safe working keeps; safe-margins.ts says how wide they are. */
export const MARGIN_CODES = [
  'voltage-near-rating',
  'rating-not-sure',
  'dissipation-near-rating',
  'test-not-fresh',
  'test-noted-fault',
  'slope-not-measured',
  'band-wide',
  'condition-not-sure',
  'socket-not-measured',
] as const
export type MarginCode = (typeof MARGIN_CODES)[number]
