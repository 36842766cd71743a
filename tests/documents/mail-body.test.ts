import { expect, test } from 'vitest'
import { quoteMail } from '@/lib/documents/mail-body'
import { paperText } from '@/lib/documents/paper-text'
import { quotePaper } from '@/lib/documents/quote-paper'
import { sampleQuote } from '@/lib/documents/samples'

test('the mail greets, names total, deposit, validity, the way to answer, and is signed by the shop', () => {
  const { subject, text } = quoteMail(sampleQuote('US'))
  expect(subject).toBe('Quote Q-1047-0 rev. 1 for your Crakewell Hollowmere 50')
  for (const said of [
    'Dear Imre Thistlewood,',
    'job 1047-0',
    'Total, Sales tax included: $288.49',
    'Deposit due before work starts: $86.55',
    'Valid until the end of Thu, Oct 22, 2026',
    'say yes or no to this number',
    'Lantern Street Amplifier Works\n14 Lantern Street\nPort Ellery, ME 04999\n207-555-0142',
  ])
    expect(text).toContain(said)
})
test('mail and paper name the same amounts and day, in both word sets', () => {
  for (const words of ['US', 'UK'] as const) {
    const quote = sampleQuote(words)
    const paper = paperText(quotePaper(quote))
    const amounts = quoteMail(quote).text.match(/[$£][\d,.]*\d/g) ?? []
    expect(amounts).toHaveLength(2)
    for (const amount of amounts) expect(paper).toContain(amount)
    expect(paper).toContain(quoteMail(quote).text.match(/until the end of (.*)/)?.[1])
  }
})
test('a name cannot bring markup into the mail or a line of its own into its head', () => {
  const sample = sampleQuote('US')
  const quote = {
    ...sample,
    customer: { ...sample.customer, name: '<b>Imre & "Sons"</b>' },
    amp: { ...sample.amp, model: '50\r\nBcc: all@example' },
  }
  const { subject, html } = quoteMail(quote)
  expect(html).toContain('Dear &lt;b&gt;Imre &amp; &quot;Sons&quot;&lt;/b&gt;,')
  expect(subject).toBe('Quote Q-1047-0 rev. 1 for your Crakewell 50 Bcc: all@example')
})
test('no deposit, no line about one', () => {
  expect(quoteMail({ ...sampleQuote('US'), depositDue: null }).text).not.toMatch(/deposit/i)
})
