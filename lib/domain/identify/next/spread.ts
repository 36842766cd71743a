/** Shannon entropy in bits, and what an answer is expected to take from it. */
export function entropyBits(shares: Iterable<number>): number {
  let bits = 0
  for (const share of shares) if (share > 0) bits -= share * Math.log2(share)
  return bits
}

/** Parts need not add up to one: they are taken as shares of their own sum. */
export function entropyOfParts(parts: readonly number[]): number {
  const total = parts.reduce((sum, part) => sum + part, 0)
  return total > 0 ? entropyBits(parts.map((part) => part / total)) : 0
}
