/** A total against what the customer agreed to at the counter. */
import { type Money, money } from '@/lib/domain/money'

export type Spending =
  /** Every amount is asked first. */
  | { readonly kind: 'no-limit' }
  | { readonly kind: 'within'; readonly limit: Money; readonly left: Money }
  | { readonly kind: 'over'; readonly limit: Money; readonly over: Money }

export function spendingOf(total: Money, limit: Money | null): Spending {
  if (limit === null) return { kind: 'no-limit' }
  return total > limit
    ? { kind: 'over', limit, over: money(total - limit) }
    : { kind: 'within', limit, left: money(limit - total) }
}

export function spendingText(spending: Spending, show: (amount: Money) => string): string {
  switch (spending.kind) {
    case 'no-limit':
      return 'No spending limit was agreed at the counter, so nothing is done before the customer has answered.'
    case 'within':
      return `Within the customer's limit of ${show(spending.limit)}; ${show(spending.left)} is left of it.`
    case 'over':
      return `Over the customer's limit of ${show(spending.limit)} by ${show(spending.over)}. Work stops until the customer has said yes to this amount.`
  }
}
