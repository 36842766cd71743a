/**
 * Hands one mail to the server. The answer is that the server took it, or its
 * own words why not; whether it reaches the reader only the reader can tell.
 *
 * Header lines cannot be forged: addresses are checked to be one plain address,
 * the subject is one line, and everything else is encoded by the transport
 * package. Nothing named in a mail is fetched from disk or network.
 */
import { createTransport } from 'nodemailer'
import { fail, ok, type Result } from '@/lib/domain/result'
import { isMailAddress, type MailServer } from './mail-server'

export type OutgoingMail = {
  /** The same at every try, so that a reader who is sent it twice sees it once. */
  readonly id: string
  readonly to: string
  readonly subject: string
  readonly text: string
  readonly attachment: { readonly filename: string; readonly pdf: Uint8Array } | null
}

const SECOND = 1000
const PATIENCE = {
  connectionTimeout: 15 * SECOND,
  greetingTimeout: 15 * SECOND,
  socketTimeout: 60 * SECOND,
  dnsTimeout: 15 * SECOND,
}

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim()

export async function sendMail({ url, from }: MailServer, mail: OutgoingMail): Promise<Result<null, string>> {
  if (!isMailAddress(mail.to)) return fail(`“${oneLine(mail.to)}” is not one plain e-mail address.`)
  const transport = createTransport({ url, ...PATIENCE, disableFileAccess: true, disableUrlAccess: true })
  try {
    await transport.sendMail(messageOf(from, mail))
    return ok(null)
  } catch (error) {
    return fail(wordsOf(error))
  } finally {
    transport.close()
  }
}

function messageOf(from: MailServer['from'], { id, to, subject, text, attachment }: OutgoingMail) {
  const domain = from.address.slice(from.address.lastIndexOf('@') + 1)
  const attached = attachment && {
    filename: oneLine(attachment.filename),
    content: Buffer.from(attachment.pdf),
    contentType: 'application/pdf',
  }
  return {
    from,
    to: { name: '', address: to },
    subject: oneLine(subject),
    text,
    messageId: `<${id}@${domain}>`,
    attachments: attached ? [attached] : [],
  }
}

/** The server's answer when there was one, else what kept us from reaching it. */
function wordsOf(error: unknown): string {
  const { response, message } = error as { readonly response?: unknown; readonly message?: unknown }
  const words = typeof response === 'string' && response !== '' ? response : message
  return oneLine(typeof words === 'string' && words !== '' ? words : String(error)).slice(0, 500)
}
