/** A value with the ends of its 95 % interval, all in one unit. The value need not be in the middle. */
export type Band = { readonly value: number; readonly low: number; readonly high: number }

export const timesBand = ({ value, low, high }: Band, factor: number): Band => ({
  value: value * factor,
  low: low * factor,
  high: high * factor,
})
