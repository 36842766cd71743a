/**
 * Money in integer minor units (cents, pence, yen), one currency per shop.
 *
 * Rounding rules, stated once (shop rule, decision 3):
 * - a line is quantity × unit price, rounded half away from zero to a minor unit;
 * - tax is taken once, on the sum of the taxable lines, rounded the same way;
 * - a deposit is a share of the total, rounded up to a whole minor unit.
 * Products are formed in BigInt, so no binary fraction enters.
 */
declare const minor: unique symbol
export type Money = number & { readonly [minor]: true }

/** Largest amount a form takes: ten million major units at two decimals. */
export const LARGEST_AMOUNT = 1_000_000_000

export function money(minorUnits: number): Money {
  if (!Number.isSafeInteger(minorUnits)) throw new Error(`Money must be whole minor units, got ${minorUnits}`)
  return (minorUnits === 0 ? 0 : minorUnits) as Money
}

export const NOTHING = money(0)

export const sum = (amounts: readonly Money[]): Money => money(amounts.reduce((total, amount) => total + amount, 0))

/** numerator / denominator, half away from zero. Denominator is positive. */
function roundedDivision(numerator: bigint, denominator: bigint): bigint {
  const sign = numerator < 0n ? -1n : 1n
  const size = numerator * sign
  return sign * ((2n * size + denominator) / (2n * denominator))
}

/** `thousandths` is the quantity times 1000: 1.25 h is 1250. */
export function lineAmount(unitPrice: Money, thousandths: number): Money {
  if (!Number.isSafeInteger(thousandths)) throw new Error(`A quantity must be whole thousandths, got ${thousandths}`)
  return money(Number(roundedDivision(BigInt(unitPrice) * BigInt(thousandths), 1000n)))
}

/** `milliPercent` is the rate times 1000: 8.875 % is 8875. */
export function taxOn(base: Money, milliPercent: number): Money {
  return money(Number(roundedDivision(BigInt(base) * BigInt(milliPercent), 100_000n)))
}

/** Share of a total that is not negative, rounded up. `percent` is a whole number. */
export function depositOf(total: Money, percent: number): Money {
  return money(Number((BigInt(total) * BigInt(percent) + 99n) / 100n))
}

/** Decimals of a currency by ISO 4217, as the runtime's own tables have them. */
export function minorDigits(currency: string): number {
  return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2
}

export function formatMoney(amount: Money, currency: string, locale: string): string {
  const digits = minorDigits(currency)
  return new Intl.NumberFormat(locale, { style: 'currency', currency }).format(Number(exactDecimal(amount, digits)))
}

/** "1234.50" with no grouping: what a form field holds. */
export function exactDecimal(amount: Money, digits: number): string {
  const sign = amount < 0 ? '-' : ''
  const whole = Math.abs(amount)
    .toString()
    .padStart(digits + 1, '0')
  if (digits === 0) return sign + whole
  return `${sign}${whole.slice(0, -digits)}.${whole.slice(-digits)}`
}
