import { beforeAll, describe, expect, it } from 'vitest'
import type { Paper } from '@/lib/documents/paper'
import { renderPdf } from '@/lib/documents/pdf'
import type { MatchStatement } from '@/lib/domain/matching/proposal'
import { money } from '@/lib/domain/money'
import { amps, ratio, volts } from '@/lib/domain/units'
import { listJobHistory } from '@/lib/store/history'
import { findPaper } from '@/lib/store/paper'
import { findDraftTubes } from '@/lib/store/quote'
import { beginQuote } from '@/lib/workflow/quote/keep-quote'
import { reviseQuote } from '@/lib/workflow/quote/revise-quote'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { chooseTubes, dropTubes } from '@/lib/workflow/tubes/choose-tubes'
import { freshDatabase } from '@/tests/support/fresh-database'
import { readPdf, squeezed } from '@/tests/support/pdf-text'
import { atBench, atCounter } from '@/tests/support/person-at-work'
import {
  answer,
  choose,
  done,
  draftWith,
  holdOf,
  jobOf,
  jobOnBench,
  keep,
  quoteOf,
  send,
  shopOnFile,
  totalOf,
  written,
  writtenLine,
} from '@/tests/support/quoted-job'
import { openStockedShop, tubeInStock } from '@/tests/support/stocked-shop'

const database = freshDatabase()
beforeAll(() => openStockedShop())

async function paperOf(paperId: string): Promise<string> {
  const paper = (await findPaper(paperId)) ?? expect.fail('no paper')
  const { text } = await readPdf(await renderPdf(paper.view as Paper, { createdAt: paper.issuedAt }))
  return squeezed(text)
}

const pair = async () => [await tubeInStock(), await tubeInStock()] as const

describe('a new quote', () => {
  it('has a number of its own, the shop’s tax and validity, and is found again instead of begun twice', async () => {
    const job = await jobOnBench()
    const [one, two] = [
      done(await beginQuote(atCounter(), await shopOnFile(), job)),
      done(await beginQuote(atCounter(), await shopOnFile(), job)),
    ]
    expect(one).toBe(two)
    // 6 May 2031 and 21 days.
    expect(await quoteOf(job)).toMatchObject({
      revision: 1,
      state: 'draft',
      taxMilliPercent: 8875,
      validUntil: '2031-05-27',
      lines: [],
    })
    const other = await jobOnBench()
    done(await beginQuote(atCounter(), await shopOnFile(), other))
    expect(Number((await quoteOf(other)).number.slice(1))).toBe(Number((await quoteOf(job)).number.slice(1)) + 1)
  })

  it('is refused on a closed job', async () => {
    const job = await jobOnBench()
    const { id } = await jobOf(job)
    await database.job.update({ where: { id }, data: { state: 'collected' } })
    expect(await beginQuote(atBench(), await shopOnFile(), job)).toMatchObject({
      ok: false,
      fault: { code: 'job-closed' },
    })
  })
})

describe('keeping the draft', () => {
  it('1.25 h at 90.00 and two tubes at 45.00, all taxed at 8.875 %, is 220.47', async () => {
    const job = await jobOnBench()
    await draftWith(job, await pair())
    // 112.50 + 90.00 = 202.50; 202.50 × 0.08875 = 17.971875 → 17.97.
    expect(await totalOf(job)).toBe(22047)
  })

  it('tells the history the total before and after, and keeps the ids of its lines', async () => {
    const job = await jobOnBench()
    await draftWith(job)
    const [line] = (await quoteOf(job)).lines
    done(await keep(job, { lines: [{ ...writtenLine({ unitPrice: money(10_000) }), id: line?.id ?? '' }] }))
    expect((await quoteOf(job)).lines[0]).toMatchObject({ id: line?.id, unitPrice: 10_000 })
    const [entry] = await listJobHistory((await jobOf(job)).id)
    // 112.50 × 1.08875 = 122.484375; 125.00 × 1.08875 = 136.09375.
    expect(entry?.changes).toContainEqual({ label: 'Total', from: '$122.48', to: '$136.09' })
  })

  it('tells of a line by what it is for: one more part changes no other line', async () => {
    const job = await jobOnBench()
    await draftWith(job, await pair())
    const { lines } = await written(job)
    done(
      await keep(job, {
        lines: [
          ...lines,
          writtenLine({ kind: 'part', text: 'Fuse holder', thousandths: 1000, unit: 'pc', unitPrice: money(600) }),
        ],
      }),
    )
    const [entry] = await listJobHistory((await jobOf(job)).id)
    // 6.00 more and 8.875 % of 208.50: 18.504375.
    expect(entry?.changes).toEqual([
      { label: 'Total', from: '$220.47', to: '$227.00' },
      { label: 'Fuse holder', from: '', to: '1 pc at $6.00, $6.00' },
    ])
  })

  it('keeps lines of a kind in the order they are written in, and a line its id when it is moved', async () => {
    const job = await jobOnBench()
    await draftWith(job)
    const part = (text: string) => ({ ...writtenLine({ kind: 'part', text, unit: 'pc' }), id: '' })
    done(await keep(job, { lines: ['Fuse holder', 'Filter can', 'Mains lead'].map(part) }))
    const { lines } = await written(job)
    const [fuse, can, lead] = lines
    if (!fuse || !can || !lead) expect.fail('three lines')
    done(await keep(job, { lines: [can, lead, fuse] }))
    const kept = (await quoteOf(job)).lines
    expect(kept.map(({ text }) => text)).toEqual(['Filter can', 'Mains lead', 'Fuse holder'])
    expect(kept.map(({ id }) => id)).toEqual([can.id, lead.id, fuse.id])
  })

  it('tells the history of a move by the order before and after, and of nothing when none was moved', async () => {
    const job = await jobOnBench()
    await draftWith(job)
    const part = (text: string) => writtenLine({ kind: 'part', text, unit: 'pc' })
    done(await keep(job, { lines: ['Fuse holder', 'Filter can', 'Mains lead'].map(part) }))
    const [fuse, can, lead] = (await written(job)).lines
    if (!fuse || !can || !lead) expect.fail('three lines')
    done(await keep(job, { lines: [can, part('Grommet'), lead, fuse] }))
    const entries = await listJobHistory((await jobOf(job)).id)
    const added = { label: 'Grommet', from: '', to: '1.25 pc at $90.00, $112.50' }
    expect(entries[0]?.changes).toContainEqual(added)
    expect(entries[0]?.changes.at(-1)).toEqual({
      label: 'Order of parts',
      from: 'Fuse holder, Filter can, Mains lead',
      to: 'Filter can, Mains lead, Fuse holder',
    })
    done(await keep(job, { note: 'Ready on Friday' }))
    const [last] = await listJobHistory((await jobOf(job)).id)
    expect(last?.changes).toEqual([{ label: 'Note', from: '', to: 'Ready on Friday' }])
  })

  it('keeps tubes in the order they are written in, each with its own price, and prints them so', async () => {
    const job = await jobOnBench()
    const [one, two] = await pair()
    await draftWith(job, [one, two])
    const [v3, v4] = (await written(job)).tubes
    if (!v3 || !v4) expect.fail('two tubes')
    done(await keep(job, { tubes: [{ ...v4, unitPrice: money(4000) }, v3] }))
    const tubes = (await quoteOf(job)).lines.filter(({ kind }) => kind === 'tube')
    expect(tubes.map(({ id, tubeId, socketPosition, unitPrice }) => [id, tubeId, socketPosition, unitPrice])).toEqual([
      [v4.id, two, 'V4', 4000],
      [v3.id, one, 'V3', 4500],
    ])
    const [entry] = await listJobHistory((await jobOf(job)).id)
    expect(entry?.changes).toContainEqual({ label: 'Order of tubes', from: 'V3, V4', to: 'V4, V3' })
    const { paperId } = done(await send(job))
    const text = await paperOf(paperId)
    expect(text.indexOf('$40.00')).toBeGreaterThan(0)
    expect(text.indexOf('$40.00')).toBeLessThan(text.indexOf('$45.00'))
  })

  it('the paper lists lines as they were moved, and a revision begins in that order', async () => {
    const job = await jobOnBench()
    await draftWith(job)
    const names = ['Fuse holder', 'Filter can', 'Mains lead']
    done(await keep(job, { lines: names.map((text) => writtenLine({ kind: 'part', text, unit: 'pc' })) }))
    done(await keep(job, { lines: (await written(job)).lines.toReversed() }))
    const { paperId } = done(await send(job))
    const text = await paperOf(paperId)
    const places = names.toReversed().map((name) => text.indexOf(squeezed(name)))
    expect(places[0]).toBeGreaterThan(0)
    expect(places).toEqual(places.toSorted((a, b) => a - b))
    done(await reviseQuote(atBench(), await shopOnFile(), job))
    expect((await quoteOf(job)).lines.map((line) => line.text)).toEqual(names.toReversed())
  })

  it('refuses the second of two when the first only moved lines, and says how they stand now', async () => {
    const job = await jobOnBench()
    await draftWith(job, await pair())
    const opened = await written(job)
    done(await keep(job, { tubes: opened.tubes.toReversed() }, atBench('Ines')))
    const late = await keep(job, { ...opened, note: 'Late' }, atCounter('Odo'))
    const changes = [{ label: 'Order of tubes', from: 'V3, V4', to: 'V4, V3' }]
    expect(late).toMatchObject({ ok: false, fault: { code: 'stale', savedBy: 'Ines', changes } })
    expect((await quoteOf(job)).note).toBe('')
  })

  it('refuses the second of two who opened the same draft, and says what the first changed', async () => {
    const job = await jobOnBench()
    await draftWith(job)
    const opened = await written(job)
    done(await keep(job, { note: 'Ready on Friday' }, atBench('Ines')))
    const late = await keep(job, opened, atCounter('Odo'))
    expect(late).toMatchObject({
      ok: false,
      fault: { code: 'stale', savedBy: 'Ines', changes: [{ label: 'Note', from: '', to: 'Ready on Friday' }] },
    })
    expect((await quoteOf(job)).note).toBe('Ready on Friday')
  })

  it('writes findings on the job, and refuses to write over findings that changed meanwhile', async () => {
    const job = await jobOnBench()
    await draftWith(job)
    done(await keep(job, { findings: { before: '', text: 'V3 runs hot.' } }))
    expect((await jobOf(job)).findings).toBe('V3 runs hot.')
    const late = await keep(job, { note: 'lost?', findings: { before: '', text: 'V4 runs cold.' } })
    expect(late).toMatchObject({ ok: false, fault: { code: 'stale' } })
    expect((await jobOf(job)).findings).toBe('V3 runs hot.')
    expect((await quoteOf(job)).note).toBe('')
  })

  it('takes no tube from the form: an id that is no tube line of this quote is nothing', async () => {
    const [job, other] = [await jobOnBench(), await jobOnBench()]
    await draftWith(job)
    await draftWith(other, await pair())
    const foreign = (await quoteOf(other)).lines
      .filter(({ kind }) => kind === 'tube')
      .map(({ id, unitPrice, taxable }) => ({ id, unitPrice, taxable }))
    done(await keep(job, { tubes: foreign }))
    expect((await quoteOf(job)).lines.map(({ kind }) => kind)).toEqual(['labour'])
    expect((await quoteOf(other)).lines).toHaveLength(3)
  })

  it('lets a tube’s price be agreed anew and the tube be taken off', async () => {
    const job = await jobOnBench()
    await draftWith(job, await pair())
    const [first] = (await written(job)).tubes
    done(await keep(job, { tubes: first ? [{ ...first, unitPrice: money(4000) }] : [] }))
    const tubes = (await quoteOf(job)).lines.filter(({ kind }) => kind === 'tube')
    expect(tubes).toMatchObject([{ unitPrice: 4000, socketPosition: 'V3' }])
  })

  it('a sent quote is not edited', async () => {
    const job = await jobOnBench()
    await draftWith(job)
    done(await send(job))
    const late = await keep(job)
    expect(late).toMatchObject({ ok: false, fault: { code: 'quote-not-draft', state: 'sent' } })
    expect(!late.ok && stepFaultText(late.fault, await shopOnFile())).toMatch(/Revise it first/)
  })
})

const point = { plateVoltage: volts(250), screenVoltage: volts(250), gridVoltage: volts(-14) }
const statement: MatchStatement = {
  firstTested: '2031-05-06',
  lastTested: '2031-05-06',
  instrument: 'Bench tester 1',
  testPoint: point,
  spreads: { plateCurrent: amps(0.001), transconductance: ratio(0.02) },
  yardsticks: { plateCurrent: amps(0.005), transconductance: ratio(0.1) },
  match: 'both',
}

describe('choosing tubes', () => {
  const chosen = async (jobNumber: string, ids: readonly string[], match: MatchStatement | null = statement) =>
    chooseTubes(atBench(), await shopOnFile(), {
      jobNumber,
      group: 'output',
      tubes: ids.map((tubeId, index) => ({ tubeId, socketPosition: `V${3 + index}` })),
      match,
    })

  it('begins the quote when there is none, and puts each tube to its socket with its price and the match', async () => {
    const job = await jobOnBench()
    const ids = await pair()
    done(await chosen(job, ids))
    const quote = await quoteOf(job)
    expect(
      quote.lines.map(({ kind, tubeId, socketPosition, unitPrice }) => [kind, tubeId, socketPosition, unitPrice]),
    ).toEqual([
      ['tube', ids[0], 'V3', 4500],
      ['tube', ids[1], 'V4', 4500],
    ])
    expect(quote.matches).toMatchObject([{ group: 'output', designation: '6L6GC', tubeIds: [...ids] }])
    expect((await findDraftTubes(quote.jobId)).map(({ socketPosition }) => socketPosition)).toEqual(['V3', 'V4'])
    expect(await holdOf(ids[0])).toEqual({ hold: '', job: null, until: null })
  })

  it('a second choice replaces the first for the same sockets; the labour stays', async () => {
    const job = await jobOnBench()
    await draftWith(job, await pair())
    const others = await pair()
    done(await chosen(job, others))
    const { lines } = await quoteOf(job)
    expect(lines.map(({ kind, tubeId }) => (kind === 'tube' ? tubeId : kind))).toEqual(['labour', ...others])
  })

  it('a match is not claimed any more when one of its tubes is off the quote', async () => {
    const job = await jobOnBench()
    done(await chosen(job, await pair()))
    done(await keep(job, { tubes: (await written(job)).tubes.slice(0, 1) }))
    expect((await quoteOf(job)).matches).toEqual([])
  })

  it('dropping takes the group’s tubes off and leaves the rest', async () => {
    const job = await jobOnBench()
    await draftWith(job, await pair())
    done(await dropTubes(atBench(), await shopOnFile(), job, 'output'))
    expect((await quoteOf(job)).lines.map(({ kind }) => kind)).toEqual(['labour'])
  })

  it('refuses one tube for two sockets, and a tube that is not there', async () => {
    const job = await jobOnBench()
    const [one] = await pair()
    expect(await chosen(job, [one, one])).toMatchObject({ ok: false, fault: { code: 'tube-twice' } })
    expect(await chosen(job, ['nothing'])).toMatchObject({ ok: false, fault: { code: 'not-found' } })
  })

  it('refuses a tube held by another job’s quote, naming tube, socket and job', async () => {
    const [job, other] = [await jobOnBench(), await jobOnBench()]
    const ids = await pair()
    await draftWith(other, ids)
    done(await send(other))
    const refused = await choose(job, ids)
    expect(refused).toMatchObject({
      ok: false,
      fault: { code: 'tube-not-free', position: 'V3', why: 'held', jobNumber: other },
    })
    expect(!refused.ok && stepFaultText(refused.fault, await shopOnFile())).toMatch(
      new RegExp(`^T-\\d+, chosen for V3, is held for job ${other} `),
    )
    done(await answer(other))
    expect(await choose(job, ids)).toMatchObject({ ok: false, fault: { why: 'reserved', jobNumber: other } })
  })

  it('refuses a tube that was sold', async () => {
    const job = await jobOnBench()
    const ids = await pair()
    await database.tube.update({ where: { id: ids[1] }, data: { whereabouts: 'sold' } })
    expect(await choose(job, ids)).toMatchObject({
      ok: false,
      fault: { code: 'tube-not-free', position: 'V4', why: 'sold', jobNumber: null },
    })
  })
})
