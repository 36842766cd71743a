/** Currencies a shop can keep its money in: the ISO 4217 codes the runtime knows. */
const USUAL = ['USD', 'EUR', 'GBP', 'JPY', 'CAD', 'AUD', 'NZD', 'CHF', 'SEK', 'NOK', 'DKK', 'PLN', 'CZK']

const known = (): readonly string[] => Intl.supportedValuesOf('currency')

/** The usual ones first, then all others by code. */
export function listCurrencies(): readonly string[] {
  const rest = known().filter((code) => !USUAL.includes(code))
  return [...USUAL.filter((code) => known().includes(code)), ...rest]
}

export const isCurrency = (code: string): boolean => known().includes(code)

/** "EUR, euro" as the locale calls it. */
export function currencyName(code: string, locale: string): string {
  const name = new Intl.DisplayNames(locale, { type: 'currency' }).of(code)
  return name && name !== code ? `${code} · ${name}` : code
}
