/** Why an output stage has no operating point. Values carry the unit that a sentence would show. */
export type SolveFault =
  | { readonly code: 'tube-count'; readonly count: number; readonly most: number }
  | {
      readonly code: 'value-out-of-range'
      /** Socket, supply or resistor, as the stage names it. */
      readonly part: string
      readonly quantity: string
      readonly value: number
      readonly unit: string
      readonly lowest: number
      readonly highest: number
    }
  | { readonly code: 'unknown-part'; readonly socket: string; readonly part: string }
  | { readonly code: 'name-used-twice'; readonly part: string }
  | { readonly code: 'unknown-socket'; readonly socket: string }
  /** The rest of the amp draws more than the supply can give: where it would stand, tubes pulled. */
  | {
      readonly code: 'supply-collapsed'
      readonly node: 'reservoir' | 'screen node'
      readonly volts: number
    }
  | { readonly code: 'did-not-converge'; readonly iterations: number; readonly worstImbalance: number }
