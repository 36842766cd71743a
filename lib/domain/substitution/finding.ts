/** What one check of a proposed substitute found. */

export const CHECKS = [
  'kind',
  'base',
  'pins',
  'heater',
  'plate volts',
  'screen volts',
  'idle',
  'screen dissipation',
  'grid leak',
  'load',
  'rectifier',
  'gain',
  'issue',
  'bulb',
] as const
export type CheckName = (typeof CHECKS)[number]

/**
 * From best to worst: all is well; worth knowing; something must be set; something could
 * not be judged; something must be altered in the amplifier; it must not go in.
 */
export const WEIGHTS = ['fits', 'note', 'adjust', 'cannot-say', 'change', 'no'] as const
export type FindingWeight = (typeof WEIGHTS)[number]

export type Finding = { readonly check: CheckName; readonly weight: FindingWeight; readonly sentence: string }

export const finding = (check: CheckName, weight: FindingWeight, sentence: string): Finding => ({
  check,
  weight,
  sentence,
})
