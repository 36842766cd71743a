/** The card of a type; `asked` is the number that led there, so that the card can say how. */
export const cardAddress = (typeId: string, asked?: string): string =>
  `/types/${encodeURIComponent(typeId)}${asked ? `?as=${encodeURIComponent(asked)}` : ''}`
