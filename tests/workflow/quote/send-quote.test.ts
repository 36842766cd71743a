import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { inTransaction } from '@/lib/store/database'
import { listJobHistory } from '@/lib/store/history'
import { claimMail, createMail, findMail, listMailsOfJob, listOutbox, settleMail } from '@/lib/store/mail'
import { listPapers } from '@/lib/store/paper'
import { reissueQuoteMail } from '@/lib/workflow/quote/reissue-quote-mail'
import { cancelWaitingMail, sendMailNow, sendOneMail, sendWaitingMail } from '@/lib/workflow/quote/send-waiting-mail'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { freshDatabase } from '@/tests/support/fresh-database'
import { addressesOf, captureMail, type MailCapture } from '@/tests/support/mail-capture'
import { readPdf, squeezed } from '@/tests/support/pdf-text'
import { atBench, NOW } from '@/tests/support/person-at-work'
import {
  daysLater,
  done,
  draftWith,
  holdOf,
  jobOf,
  jobOnBench,
  keep,
  quoteOf,
  send,
  shopOnFile,
} from '@/tests/support/quoted-job'
import { openStockedShop, tubeInStock } from '@/tests/support/stocked-shop'

const database = freshDatabase()
let server: MailCapture
beforeAll(async () => {
  await openStockedShop()
  server = await captureMail({ slowBy: 150 })
})
afterAll(() => server.close())
afterEach(async () => {
  server.refuseWith(null)
  server.mails.length = 0
  serve(null)
  await database.mail.updateMany({ where: { state: { not: 'sent' } }, data: { state: 'cancelled' } })
})

function serve(url: string | null, from = 'Lantern Street <bench@lanternstreet.example>') {
  if (url === null) delete process.env.BENCHGLOW_SMTP_URL
  else process.env.BENCHGLOW_SMTP_URL = url
  process.env.BENCHGLOW_MAIL_FROM = from
}

async function drafted(owner = {}): Promise<string> {
  const job = await jobOnBench(owner)
  await draftWith(job, [await tubeInStock(), await tubeInStock()])
  return job
}

const mailsOf = async (jobNumber: string) => listMailsOfJob((await jobOf(jobNumber)).id)
const onlyMail = async (jobNumber: string) => {
  const [mail, ...more] = await mailsOf(jobNumber)
  if (!mail || more.length > 0) throw new Error(`${more.length + (mail ? 1 : 0)} mails`)
  return mail
}

describe('a quote by mail', () => {
  it('reaches the customer with the paper attached, whose text has the total', async () => {
    serve(server.url)
    const job = await drafted()
    const { mail } = done(await send(job, 'mail'))
    expect(mail).toEqual({ kind: 'sent' })
    const [got, ...more] = server.mails
    expect(more).toEqual([])
    const { number } = await quoteOf(job)
    expect(got?.envelopeTo).toEqual(['mirela@thorn.example'])
    expect(addressesOf(got?.from)).toEqual(['bench@lanternstreet.example'])
    expect(got?.subject).toBe(`Quote ${number} rev. 1 for your Corvane Tilt 20`)
    expect(got?.text).toContain('$220.47')
    const [pdf] = got?.attachments ?? []
    expect([pdf?.contentType, pdf?.filename]).toEqual(['application/pdf', `quote-${number}-rev.-1.pdf`])
    const paper = await readPdf(new Uint8Array(pdf?.content ?? Buffer.alloc(0)))
    // 1.25 h at 90.00 and two tubes at 45.00: 202.50 and 8.875 % of it, 17.97.
    for (const text of ['$202.50', '$17.97', '$220.47', 'May 27, 2031', 'Mirela Thorn', 'used tube'])
      expect(squeezed(paper.text)).toContain(squeezed(text))
    expect(await onlyMail(job)).toMatchObject({ state: 'sent', tries: 1, lastError: '' })
  })

  it('is in the history of the job: what was sent, and that the server took it', async () => {
    serve(server.url)
    const job = await drafted()
    done(await send(job, 'mail'))
    const said = (await listJobHistory((await jobOf(job)).id)).map(({ did }) => did)
    expect(
      said.some((did) => /over \$220\.47 to be mailed to mirela@thorn\.example, valid until May 27, 2031$/.test(did)),
    ).toBe(true)
    expect(said.some((did) => /^Mail “Quote .*” sent to mirela@thorn\.example$/.test(did))).toBe(true)
  })

  it('without an address is refused with the other way, and nothing is held', async () => {
    const ids = [await tubeInStock()]
    const job = await jobOnBench({ email: '' })
    await draftWith(job, ids)
    const refused = await send(job, 'mail')
    expect(refused).toMatchObject({ ok: false, fault: { code: 'no-address', customer: 'Mirela Thorn' } })
    expect(!refused.ok && stepFaultText(refused.fault, await shopOnFile())).toMatch(/Print the quote and hand it over/)
    expect(await holdOf(ids[0] ?? '')).toMatchObject({ hold: '' })
    expect(done(await send(job, 'hand-over')).mail).toBeNull()
    expect(await mailsOf(job)).toEqual([])
    expect((await listPapers((await jobOf(job)).id, 'quote')).length).toBe(1)
  })
})

describe('with no server set up', () => {
  it('the mail waits and is seen in the outbox; the quote is out; later it goes', async () => {
    const job = await drafted()
    expect(done(await send(job, 'mail')).mail).toEqual({ kind: 'waiting' })
    expect((await quoteOf(job)).state).toBe('sent')
    expect((await listOutbox()).find(({ jobNumber }) => jobNumber === job)).toMatchObject({
      state: 'waiting',
      tries: 0,
    })
    serve(server.url)
    expect(await sendWaitingMail(daysLater(1), await shopOnFile(), { failedToo: false })).toMatchObject({
      sent: 1,
      failed: 0,
    })
    expect(server.mails).toHaveLength(1)
    expect((await onlyMail(job)).state).toBe('sent')
  })

  it('waits too when the server’s address is no address, or nobody is the sender', async () => {
    const job = await drafted()
    serve('mail.example')
    expect(done(await send(job, 'mail')).mail).toEqual({ kind: 'waiting' })
    serve(server.url, 'no address')
    expect(await sendOneMail(atBench(), await shopOnFile(), (await onlyMail(job)).id)).toEqual({ kind: 'waiting' })
    expect((await onlyMail(job)).tries).toBe(0)
  })

  it('the next mail that goes through takes along what waited', async () => {
    const waiting = await drafted()
    done(await send(waiting, 'mail'))
    serve(server.url)
    done(await send(await drafted({ email: 'second@thorn.example' }), 'mail'))
    expect(server.mails.map(({ envelopeTo }) => envelopeTo[0])).toEqual([
      'second@thorn.example',
      'mirela@thorn.example',
    ])
    expect((await onlyMail(waiting)).state).toBe('sent')
  })
})

describe('a server that refuses', () => {
  it('leaves the mail failed with its words; tried again by hand, it goes', async () => {
    serve(server.url)
    server.refuseWith('No such mailbox here')
    const job = await drafted()
    const { mail } = done(await send(job, 'mail'))
    expect(mail).toMatchObject({ kind: 'failed', words: expect.stringContaining('No such mailbox here') })
    const failed = await onlyMail(job)
    expect(failed).toMatchObject({
      state: 'failed',
      lastError: expect.stringContaining('550 No such mailbox here'),
      tries: 1,
      sentAt: null,
    })
    server.refuseWith(null)
    expect(await sendMailNow(atBench(), await shopOnFile(), failed.id)).toEqual({ ok: true, value: { kind: 'sent' } })
    expect(await onlyMail(job)).toMatchObject({ state: 'sent', tries: 2, lastError: '' })
    expect(server.mails).toHaveLength(1)
  })

  it('that is not there at all is told in words too, and the failed one goes with the next round', async () => {
    const gone = await captureMail()
    await gone.close()
    serve(gone.url)
    const job = await drafted()
    done(await send(job, 'mail'))
    expect((await onlyMail(job)).lastError).toMatch(/ECONNREFUSED/)
    serve(server.url)
    expect(await sendWaitingMail(atBench(), await shopOnFile(), { failedToo: false })).toMatchObject({ sent: 0 })
    expect(await sendWaitingMail(atBench(), await shopOnFile(), { failedToo: true })).toMatchObject({ sent: 1 })
  })
})

describe('one mail, once', () => {
  async function waitingMail(): Promise<string> {
    const job = await drafted()
    done(await send(job, 'mail'))
    return (await onlyMail(job)).id
  }

  it('two presses at once send one', async () => {
    const id = await waitingMail()
    serve(server.url)
    const shop = await shopOnFile()
    const outcomes = await Promise.all([sendOneMail(atBench(), shop, id), sendOneMail(atBench('Odo'), shop, id)])
    expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['not-ours', 'sent'])
    expect(server.mails).toHaveLength(1)
  })

  it('a sent one is not sent again, and says so', async () => {
    const id = await waitingMail()
    serve(server.url)
    done(await sendMailNow(atBench(), await shopOnFile(), id))
    const again = await sendMailNow(atBench(), await shopOnFile(), id)
    expect(again).toEqual({ ok: false, fault: { code: 'mail-settled', state: 'sent' } })
    expect(server.mails).toHaveLength(1)
  })

  it('a try that died is left alone for five minutes and then taken over; its late answer changes nothing', async () => {
    const id = await waitingMail()
    serve(server.url)
    const shop = await shopOnFile()
    const died = await inTransaction((tx) => claimMail(tx, id, NOW))
    const later = (seconds: number) => atBench('Ines', new Date(NOW.getTime() + seconds * 1000))
    expect(await sendOneMail(later(300), shop, id)).toEqual({ kind: 'not-ours' })
    expect(await sendOneMail(later(301), shop, id)).toEqual({ kind: 'sent' })
    expect(await inTransaction((tx) => settleMail(tx, died ?? { id, tries: 0 }, { words: 'too late' }))).toBe(false)
    expect(await findMail(id)).toMatchObject({ state: 'sent', tries: 2, lastError: '' })
  })

  it('a cancelled one is not sent, neither by hand nor with the others', async () => {
    const id = await waitingMail()
    done(await cancelWaitingMail(atBench(), id))
    serve(server.url)
    await sendWaitingMail(atBench(), await shopOnFile(), { failedToo: true })
    expect(await sendMailNow(atBench(), await shopOnFile(), id)).toMatchObject({
      ok: false,
      fault: { code: 'mail-settled', state: 'cancelled' },
    })
    expect(server.mails).toEqual([])
  })
})

describe('the mail written anew', () => {
  it('goes to the address on file now, with the same frozen paper; the waiting one is cancelled', async () => {
    const job = await drafted({ email: 'mistyped@thorn.example' })
    done(await send(job, 'mail'))
    const { customerId } = await jobOf(job)
    await database.customer.update({ where: { id: customerId }, data: { email: 'right@thorn.example' } })
    serve(server.url)
    expect(done(await reissueQuoteMail(atBench(), await shopOnFile(), job))).toEqual({ kind: 'sent' })
    expect(server.mails.map(({ envelopeTo }) => envelopeTo)).toEqual([['right@thorn.example']])
    const states = (await mailsOf(job)).map(({ to, state, paperId }) => [to, state, paperId])
    const [paper] = await listPapers((await jobOf(job)).id, 'quote')
    expect(states.sort()).toEqual([
      ['mistyped@thorn.example', 'cancelled', paper?.id],
      ['right@thorn.example', 'sent', paper?.id],
    ])
  })
})

describe('what a name or an address may not do', () => {
  const outgoing = (to: string, subject: string) =>
    inTransaction((tx) =>
      createMail(tx, {
        jobId: null,
        paperId: null,
        to,
        subject,
        body: 'Dear\r\n.\r\nBcc: x@y.example',
        createdAt: NOW,
      }),
    )

  it('a subject with line breaks adds no header and no reader', async () => {
    serve(server.url)
    const id = await outgoing('a@b.example', 'Quote\r\nBcc: eve@evil.example\r\n\r\nbody')
    expect(await sendOneMail(atBench(), await shopOnFile(), id)).toEqual({ kind: 'sent' })
    const [got] = server.mails
    expect(got?.subject).toBe('Quote Bcc: eve@evil.example body')
    expect(got?.headers.has('bcc')).toBe(false)
    expect(got?.envelopeTo).toEqual(['a@b.example'])
    expect(got?.text).toContain('Bcc: x@y.example')
  })

  it.each(['a@b.example, eve@evil.example', 'a@b.example\r\nRCPT TO:<eve@evil.example>', 'Eve <eve@evil.example>', ''])(
    '“%s” is not sent to',
    async (to) => {
      serve(server.url)
      const outcome = await sendOneMail(atBench(), await shopOnFile(), await outgoing(to, 'Quote'))
      expect(outcome).toMatchObject({
        kind: 'failed',
        words: expect.stringContaining('is not one plain e-mail address'),
      })
      expect(server.mails).toEqual([])
    },
  )
})

describe('a quote whose note says more', () => {
  it('is kept in the frozen paper as it was sent, whatever is changed later', async () => {
    const job = await drafted()
    done(
      await keep(job, {
        note: 'Ready within a week of your yes.',
        findings: { before: '', text: 'V3 idles at 110 % of its rating.' },
      }),
    )
    const { paperId } = done(await send(job, 'hand-over'))
    await database.job.update({ where: { id: (await jobOf(job)).id }, data: { findings: 'changed' } })
    const row = await database.paper.findUniqueOrThrow({ where: { id: paperId } })
    expect(JSON.stringify(row.view)).toContain('V3 idles at 110 % of its rating.')
    expect(JSON.stringify(row.view)).toContain('Ready within a week of your yes.')
  })
})
