/**
 * What a job costs, what was paid, and what is still owed. Payments are signed:
 * money given back is below nothing.
 */
import { type Money, money, sum } from '@/lib/domain/money'

export const PAYMENT_KINDS = ['deposit', 'payment', 'refund'] as const
export type PaymentKind = (typeof PAYMENT_KINDS)[number]

export const PAYMENT_WAYS = ['cash', 'card', 'bank transfer', 'cheque', 'other'] as const
export type PaymentWay = (typeof PAYMENT_WAYS)[number]

export type Payment = {
  readonly id: string
  readonly amount: Money
  readonly kind: PaymentKind
  /** In words: "card", "bank transfer". */
  readonly how: string
  readonly at: Date
  readonly takenBy: string
}

export type Account = {
  /** Of the accepted quote; null: none is accepted, so no total stands. */
  readonly total: Money | null
  readonly paid: Money
  /** Still owed when above nothing; to be given back when below. */
  readonly balance: Money
}

export function accountOf(total: Money | null, payments: readonly Pick<Payment, 'amount'>[]): Account {
  const paid = sum(payments.map(({ amount }) => amount))
  return { total, paid, balance: money((total ?? 0) - paid) }
}

/** "Deposit, card": as it is printed. */
export const paymentText = ({ kind, how }: Pick<Payment, 'kind' | 'how'>): string =>
  [`${kind.charAt(0).toUpperCase()}${kind.slice(1)}`, how].filter(Boolean).join(', ')
