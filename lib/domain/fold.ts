/** Text for searching: lower case, no accents, single spaces. */
export function fold(...texts: readonly string[]): string {
  return texts.join(' ').normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replace(/\s+/g, ' ').trim()
}

/** Phone digits only, so that "+00 (555) 01-23" is found by "5550123". */
export const digitsOf = (text: string): string => text.replace(/\D/g, '')
