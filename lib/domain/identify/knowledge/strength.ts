/**
 * How much a rule weighs: the natural logarithm of a likelihood ratio, on a scale of four words.
 * A rule of strength s says that what it does not expect is exp(-s) as likely as what it expects.
 * The scale is a choice, no measurement: decides 1 in 1000, strong 1 in 30, fair 1 in 6, slight 1 in 2.
 */
export type Strength = 'slight' | 'fair' | 'strong' | 'decides'

export const STRENGTHS: Readonly<Record<Strength, number>> = {
  slight: Math.log(2),
  fair: Math.log(6),
  strong: Math.log(30),
  decides: Math.log(1000),
}

/** From here on a misfit is called a contradiction. */
export const CONTRADICTS = STRENGTHS.strong
