/** A real SMTP server on loopback that keeps what it is sent, or refuses it. */
import type { AddressInfo } from 'node:net'
import { type AddressObject, type ParsedMail, simpleParser } from 'mailparser'
import { SMTPServer } from 'smtp-server'

export type CapturedMail = ParsedMail & { readonly envelopeTo: readonly string[]; readonly raw: string }

export type MailCapture = {
  readonly url: string
  readonly mails: CapturedMail[]
  /** From now on every recipient is refused with these words; null takes mail again. */
  refuseWith: (words: string | null) => void
  readonly close: () => Promise<void>
}

type CaptureOptions = { readonly slowBy?: number /** 0: any free one. */; readonly port?: number }

export async function captureMail({ slowBy = 0, port: wanted = 0 }: CaptureOptions = {}): Promise<MailCapture> {
  const mails: CapturedMail[] = []
  let refusal: string | null = null
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onRcptTo(_address, _session, done) {
      done(refusal === null ? null : Object.assign(new Error(refusal), { responseCode: 550 }))
    },
    async onData(stream, session, done) {
      const chunks: Buffer[] = []
      for await (const chunk of stream) chunks.push(chunk as Buffer)
      const raw = Buffer.concat(chunks)
      const parsed = await simpleParser(raw)
      if (slowBy > 0) await new Promise((resolve) => setTimeout(resolve, slowBy))
      mails.push({
        ...parsed,
        envelopeTo: session.envelope.rcptTo.map(({ address }) => address),
        raw: raw.toString('utf8'),
      })
      done()
    },
  })
  await new Promise<void>((resolve) => server.listen(wanted, '127.0.0.1', resolve))
  const { port } = server.server.address() as AddressInfo
  return {
    url: `smtp://127.0.0.1:${port}`,
    mails,
    refuseWith: (words) => {
      refusal = words
    },
    close: () => new Promise((resolve) => server.close(() => resolve())),
  }
}

export const addressesOf = (field: AddressObject | AddressObject[] | undefined): string[] =>
  [field ?? []].flat().flatMap(({ value }) => value.map(({ address }) => address ?? ''))
