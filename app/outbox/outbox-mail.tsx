/** One mail: where it is, what it says, and what can be done with it. */
import Link from 'next/link'
import { ActForm } from '@/app/_components/form/act-form'
import { formatInstant } from '@/lib/domain/calendar'
import { type MailState, mailStateWord } from '@/lib/domain/quote/mail'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import type { OutboxMail } from '@/lib/store/mail'
import { submitCancel, submitSendNow } from './actions'

const SHAPES: Record<MailState, { shape: string; tone?: 'good' | 'warn' }> = {
  waiting: { shape: '◇' },
  sending: { shape: '◎' },
  sent: { shape: '●', tone: 'good' },
  failed: { shape: '!', tone: 'warn' },
  cancelled: { shape: '▫' },
}

type Props = { readonly mail: OutboxMail; readonly shop: Shop; readonly canSend: boolean }

export function OutboxMailPanel({ mail, shop, canSend }: Props) {
  const { locale } = wordsFor(shop.words)
  const { shape, tone } = SHAPES[mail.state]
  const when = (instant: Date) => formatInstant(instant, shop.timeZone, locale)
  const open = mail.state === 'waiting' || mail.state === 'failed' || mail.state === 'sending'
  return (
    <article className="panel" aria-label={`${mail.subject}, to ${mail.to}`}>
      <div className="panel-head">
        <h2>{mail.subject}</h2>
        <span className="tag" data-shape={shape} data-tone={tone}>
          {mailStateWord(mail.state)}
        </span>
      </div>
      <p>
        To {mail.to}, written {when(mail.createdAt)}
        {mail.sentAt && `, sent ${when(mail.sentAt)}`}
        {mail.tries > 0 && mail.state !== 'sent' && `, tried ${mail.tries === 1 ? 'once' : `${mail.tries} times`}`}.{' '}
        {mail.jobNumber && <Link href={`/jobs/${mail.jobNumber}/quote`}>Job {mail.jobNumber}</Link>}
      </p>
      {mail.lastError !== '' && mail.state !== 'sent' && <p className="caution">The server said: {mail.lastError}</p>}
      <details>
        <summary>Read it</summary>
        <p style={{ whiteSpace: 'pre-line' }}>{mail.body}</p>
        {mail.paperId && <a href={`/papers/${mail.paperId}`}>The paper attached</a>}
      </details>
      {open && (
        <div className="row">
          {canSend && <ActForm action={submitSendNow.bind(null, mail.id)}>Send now</ActForm>}
          <ActForm action={submitCancel.bind(null, mail.id)} quiet>
            Cancel
          </ActForm>
        </div>
      )}
    </article>
  )
}
