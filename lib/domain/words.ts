/**
 * Trade words by locale. Safety earth and chassis are two things and keep two
 * words in both locales. Common practice, no source.
 */
export type WordSet = 'US' | 'UK'

export type Words = {
  readonly locale: 'en-US' | 'en-GB'
  readonly tube: string
  readonly tubes: string
  readonly plate: string
  readonly supply: string
  readonly earth: string
  readonly mains: string
}

const US: Words = {
  locale: 'en-US',
  tube: 'tube',
  tubes: 'tubes',
  plate: 'plate',
  supply: 'B+',
  earth: 'safety ground',
  mains: 'line',
}

const UK: Words = {
  locale: 'en-GB',
  tube: 'valve',
  tubes: 'valves',
  plate: 'anode',
  supply: 'HT',
  earth: 'safety earth',
  mains: 'mains',
}

export const wordsFor = (set: WordSet): Words => (set === 'UK' ? UK : US)

/** "plate volts" at the start of a label: "Plate volts". */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
