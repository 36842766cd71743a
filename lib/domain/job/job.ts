/** One amplifier in the shop's care, from the counter to collected. */
import type { Day } from '@/lib/domain/calendar'
import type { Money } from '@/lib/domain/money'
import type { JobState } from './job-state'

export type JobItem = {
  readonly id: string
  readonly count: number
  readonly label: string
  readonly returned: boolean
}

export type Job = {
  readonly id: string
  /** Sayable, with its check digit: "1047-0". */
  readonly number: string
  readonly customerId: string
  readonly ampId: string
  readonly state: JobState
  readonly stateSince: Date
  /** In the customer's own words. */
  readonly fault: string
  /** Settings and input that show it. */
  readonly faultSettings: string
  /** Null: no limit agreed, so every amount is asked first. */
  readonly spendingLimit: Money | null
  readonly promisedOn: Day | null
  readonly oldPartsBack: boolean
  readonly takenInBy: string
  readonly receivedAt: Date
  /** What the bench found, in sentences; printed on the quote. */
  readonly findings: string
  readonly declinedWork: string
  readonly collectedBy: string
  readonly collectedIdentity: string
  readonly collectedAt: Date | null
  readonly items: readonly JobItem[]
  readonly version: number
}

export type JobIntake = Pick<Job, 'fault' | 'faultSettings' | 'spendingLimit' | 'promisedOn' | 'oldPartsBack'> & {
  readonly items: readonly { readonly count: number; readonly label: string }[]
}

/** A row of the day's list. */
export type JobLine = Pick<
  Job,
  'id' | 'ampId' | 'number' | 'state' | 'stateSince' | 'fault' | 'promisedOn' | 'receivedAt'
> & {
  readonly customerName: string
  readonly ampName: string
  readonly serial: string
}
