import type { Metadata } from 'next'
import { ActForm } from '@/app/_components/form/act-form'
import { Shell } from '@/app/_components/shell/shell'
import { requireUser } from '@/lib/session'
import { listOutbox } from '@/lib/store/mail'
import { mailServerText } from '@/lib/workflow/quote/send-waiting-mail'
import { submitSendAll } from './actions'
import { OutboxMailPanel } from './outbox-mail'

export const metadata: Metadata = { title: 'Outbox' }

export default async function OutboxPage() {
  const { actor, shop } = await requireUser()
  const mails = await listOutbox()
  const unsent = mails.filter(({ state }) => state === 'waiting' || state === 'failed' || state === 'sending').length
  const server = mailServerText(shop)
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>Outbox</h1>
        <p className="soft">
          {unsent === 0
            ? 'Nothing waits.'
            : unsent === 1
              ? 'One mail has not gone out.'
              : `${unsent} mails have not gone out.`}
        </p>
      </div>
      <p className={server.ready ? 'soft' : 'caution'}>{server.text}</p>
      {server.ready && unsent > 0 && <ActForm action={submitSendAll}>Send what waits or failed</ActForm>}
      <div className="stack">
        {mails.map((mail) => (
          <OutboxMailPanel key={mail.id} mail={mail} shop={shop} canSend={server.ready} />
        ))}
      </div>
      {mails.length === 0 && <p className="soft">No mail has been written yet. Quotes sent by mail are listed here.</p>}
    </Shell>
  )
}
