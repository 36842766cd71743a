/** One mail of the outbox. It is written down with the quote it carries, and only then sent. */
export const MAIL_STATES = ['waiting', 'sending', 'sent', 'failed', 'cancelled'] as const
export type MailState = (typeof MAIL_STATES)[number]

export type Mail = {
  readonly id: string
  readonly jobId: string | null
  readonly paperId: string | null
  readonly to: string
  readonly subject: string
  readonly body: string
  readonly state: MailState
  readonly tries: number
  /** The server's own words at the last try; empty when it had none. */
  readonly lastError: string
  readonly createdAt: Date
  /** Null until the server has taken it. */
  readonly sentAt: Date | null
}

/** A try that has not answered for so long has died with its process: the mail may be tried again. */
export const STALE_TRY_MINUTES = 5

export function mailStateWord(state: MailState): string {
  switch (state) {
    case 'waiting':
      return 'waiting to be sent'
    case 'sending':
      return 'being sent'
    case 'sent':
      return 'sent'
    case 'failed':
      return 'not taken by the server'
    case 'cancelled':
      return 'cancelled'
  }
}
