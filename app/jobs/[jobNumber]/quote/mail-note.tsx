/** Where the mail of a quote is, in words. */
import Link from 'next/link'
import { ActForm } from '@/app/_components/form/act-form'
import { formatInstant } from '@/lib/domain/calendar'
import { type Mail, mailStateWord } from '@/lib/domain/quote/mail'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { submitReissue } from './actions'

type Props = {
  readonly mails: readonly Mail[]
  readonly shop: Shop
  readonly jobNumber: string
  readonly address: string
  readonly open: boolean
}

export function MailNote({ mails, shop, jobNumber, address, open }: Props) {
  const { locale } = wordsFor(shop.words)
  const [last] = mails
  return (
    <section className="panel stack" aria-labelledby="quote-mail">
      <h2 id="quote-mail">Mail</h2>
      {mails.length === 0 && <p>Not mailed: printed and handed over.</p>}
      {mails.map(({ id, to, state, sentAt, lastError }) => (
        <div key={id}>
          <p>
            To {to}: <strong>{mailStateWord(state)}</strong>
            {sentAt && `, ${formatInstant(sentAt, shop.timeZone, locale)}`}
          </p>
          {state === 'failed' && lastError !== '' && <p className="caution">The server said: {lastError}</p>}
        </div>
      ))}
      {last && last.state !== 'sent' && last.state !== 'cancelled' && <Link href="/outbox">See it in the outbox</Link>}
      {open && address !== '' && (
        <ActForm action={submitReissue.bind(null, jobNumber)} quiet>
          {mails.length === 0 ? `Mail it to ${address}` : `Mail it again, to ${address}`}
        </ActForm>
      )}
    </section>
  )
}
