/** Sets chosen from a plane of points, with what is known about how good they are. */
export type SetPlan = {
  /** By first member; members rising. */
  readonly sets: readonly { readonly members: readonly number[]; readonly spread: number }[]
  readonly singles: readonly number[]
  /** Sum of spreads and single costs. */
  readonly cost: number
  /** No choice of sets costs less: over all sets there are, not only over those looked at. */
  readonly bound: number
  readonly ended: 'optimal' | 'time' | 'cancelled'
}

/** What the bound leaves open, as a share of the cost. */
export const gapOf = ({ cost, bound }: Pick<SetPlan, 'cost' | 'bound'>): number =>
  cost === 0 ? 0 : (cost - bound) / cost
