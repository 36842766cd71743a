/**
 * Test points of the demo stock and what a tube by the book shows there. Rows
 * printed in receiving-tube handbooks, from memory, except: the 6L6GC at
 * 400/400/−36 V, estimated between printed rows; the rectifiers, tested for
 * emission at a low drop, by I = K·V^1.5 from the printed drop.
 */
export type BookValue = {
  readonly plateVolts: number
  readonly screenVolts: number | null
  readonly gridVolts: number | null
  readonly plateMilliamps: number
  readonly screenMilliamps: number | null
  /** Null for rectifiers. */
  readonly gmMilliampsPerVolt: number | null
  readonly sections: 1 | 2
}

const output = (
  [plateVolts, screenVolts, gridVolts]: readonly [number, number, number],
  [plateMilliamps, screenMilliamps, gmMilliampsPerVolt]: readonly [number, number, number],
): BookValue => ({
  plateVolts,
  screenVolts,
  gridVolts,
  plateMilliamps,
  screenMilliamps,
  gmMilliampsPerVolt,
  sections: 1,
})

const twin = (
  plateVolts: number,
  gridVolts: number,
  plateMilliamps: number,
  gmMilliampsPerVolt: number,
): BookValue => ({
  plateVolts,
  screenVolts: null,
  gridVolts,
  plateMilliamps,
  screenMilliamps: null,
  gmMilliampsPerVolt,
  sections: 2,
})

const rectifier = (plateVolts: number, plateMilliamps: number): BookValue => ({
  plateVolts,
  screenVolts: null,
  gridVolts: null,
  plateMilliamps,
  screenMilliamps: null,
  gmMilliampsPerVolt: null,
  sections: 2,
})

export const BOOK_VALUES = {
  '6V6GT': output([250, 250, -12.5], [45, 4.5, 4.1]),
  '6L6GC': output([250, 250, -14], [72, 5, 6]),
  '6L6GC at 400 V': output([400, 400, -36], [62, 3.4, 5.1]),
  // Invented, as it is written down for the demo shop.
  '6L6-QH25': output([350, 250, -17], [60, 3.2, 5.4]),
  '5881': output([250, 250, -14], [75, 4.3, 6.1]),
  EL34: output([250, 265, -13.5], [100, 14.9, 11]),
  EL84: output([250, 250, -7.3], [48, 5.5, 11.3]),
  '6BQ5': output([250, 250, -7.3], [48, 5.5, 11.3]),
  KT88: output([250, 250, -15], [140, 3, 11.5]),
  EF86: output([250, 140, -2.2], [3, 0.6, 2.2]),
  '12AX7': twin(250, -2, 1.2, 1.6),
  '12AT7': twin(250, -2, 10, 5.5),
  '12AU7': twin(250, -8.5, 10.5, 2.2),
  '12AY7': twin(250, -4, 3, 1.75),
  '5Y3GT': rectifier(30, 44),
  '5AR4': rectifier(10, 101),
  '5U4GB': rectifier(20, 70),
} as const satisfies Record<string, BookValue>

export type BookKey = keyof typeof BOOK_VALUES
