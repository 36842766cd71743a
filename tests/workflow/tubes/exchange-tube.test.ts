import { beforeAll, describe, expect, it } from 'vitest'
import { money } from '@/lib/domain/money'
import { totalsOf } from '@/lib/domain/quote/quote'
import { volts } from '@/lib/domain/units'
import { listHistoryOf, listJobHistory } from '@/lib/store/history'
import { findAcceptedQuote, listQuotes } from '@/lib/store/quote'
import { findTube } from '@/lib/store/tube'
import { reviseQuote } from '@/lib/workflow/quote/revise-quote'
import { undoAnswer } from '@/lib/workflow/quote/undo-answer'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { addTubeTest } from '@/lib/workflow/stock/add-tube-test'
import { moveTube } from '@/lib/workflow/stock/move-tube'
import { fitTube, takeTubeOut } from '@/lib/workflow/work/fit-tubes'
import { acceptedPair, asSeen, aTube, draftPair, exchange, marksOf, sentPair } from '@/tests/support/exchanged-job'
import { freshDatabase } from '@/tests/support/fresh-database'
import { MATCHED_PAIR } from '@/tests/support/matched-pair'
import { atCounter } from '@/tests/support/person-at-work'
import { answer, done, holdOf, jobOf, quoteOf, send, shopOnFile, totalOf } from '@/tests/support/quoted-job'
import { openStockedShop, section, testEntry, tubeInStock } from '@/tests/support/stocked-shop'
import { later, read } from '@/tests/support/tested-job'

const database = freshDatabase()
beforeAll(() => openStockedShop())

const markOf = async (id: string) => (await findTube(id))?.mark ?? ''
const FREE = { hold: '', job: null, until: null }

async function refusal(asked: Parameters<typeof exchange>[0], step = later(21)): Promise<string> {
  const answered = await exchange(asked, step)
  if (answered.ok) throw new Error('It was taken')
  return stepFaultText(answered.fault, await shopOnFile())
}

async function told(number: string) {
  const [last] = await listJobHistory((await jobOf(number)).id)
  return { did: last?.did, changes: last?.changes }
}

describe('a tube reserved for a job', () => {
  it('is exchanged in one step: line, holds and the stories of both tubes and of the job', async () => {
    const pair = await acceptedPair()
    const { number, ids } = pair
    const other = await aTube()
    const [a, b, c] = await Promise.all([ids[0], ids[1], other].map(markOf))
    expect(done(await exchange(await asSeen(pair, other)))).toEqual({ out: a, into: c })
    const quote = await findAcceptedQuote((await jobOf(number)).id)
    const tubes = quote?.lines.flatMap(({ tubeId, socketPosition, text }) =>
      tubeId ? [[socketPosition, tubeId, text]] : [],
    )
    // What was quoted stays to be read in the line; which tube is meant is what changed.
    expect(tubes).toEqual([
      ['V3', other, `6V6GT, mark ${a}`],
      ['V4', ids[1], `6V6GT, mark ${b}`],
    ])
    expect(await holdOf(ids[0])).toEqual(FREE)
    expect(await holdOf(other)).toEqual({ hold: 'reserved', job: number, until: null })
    expect(await holdOf(ids[1])).toEqual({ hold: 'reserved', job: number, until: null })
    expect(await told(number)).toEqual({
      did: `${a} exchanged for ${c} in V3; quoted was 6V6GT, mark ${a}`,
      changes: [{ label: 'V3', from: `6V6GT, mark ${a}`, to: `6V6GT, mark ${c}` }],
    })
    const named = `V3 of job ${number}, quote ${quote?.number}, revision 1`
    expect((await listHistoryOf('tube', ids[0]))[0]?.did).toBe(`Exchanged for ${c} in ${named}: free again`)
    expect((await listHistoryOf('tube', other))[0]?.did).toBe(`In place of ${a} in ${named}: reserved`)
  })

  it('is then fitted as the one that is meant, and the old one goes to another job', async () => {
    const pair = await acceptedPair()
    const other = await aTube()
    done(await exchange(await asSeen(pair, other)))
    done(await fitTube(later(30), pair.number, 'V3'))
    expect((await findTube(other))?.whereabouts).toBe('fitted')
    const next = await acceptedPair()
    done(await exchange(await asSeen(next, pair.ids[0])))
    expect(await holdOf(pair.ids[0])).toEqual({ hold: 'reserved', job: next.number, until: null })
  })

  it('comes back by the same step: line, holds and price are what they were, and the history says so', async () => {
    const pair = await acceptedPair(MATCHED_PAIR)
    const { number, ids } = pair
    const before = await quoteOf(number)
    const other = await aTube({ price: money(4000) })
    done(await exchange(await asSeen(pair, other)))
    done(await exchange(await asSeen(pair, ids[0]), later(22)))
    const after = await quoteOf(number)
    expect({ ...after, version: 0 }).toEqual({ ...before, version: 0 })
    expect(await holdOf(other)).toEqual(FREE)
    expect(await holdOf(ids[0])).toEqual({ hold: 'reserved', job: number, until: null })
    expect((await told(number)).did).toBe(
      `${await markOf(other)} exchanged for ${await markOf(ids[0])} in V3, as quoted`,
    )
  })
})

describe('what the customer pays', () => {
  it('$45.00 quoted, $38.00 for the one that comes: $7.00 and its tax are credited in a line of its own', async () => {
    const pair = await acceptedPair()
    const before = await totalOf(pair.number)
    const other = await aTube({ price: money(3800) })
    done(await exchange(await asSeen(pair, other)))
    const quote = await quoteOf(pair.number)
    expect(quote.lines.map(({ kind, unitPrice, socketPosition }) => [kind, unitPrice, socketPosition])).toEqual([
      ['labour', 9000, null],
      ['tube', 4500, 'V3'],
      ['tube', 4500, 'V4'],
      ['fee', -700, 'V3'],
    ])
    // 8.875 % of $7.00 is $0.62.
    expect(before - totalsOf(quote).total).toBe(762)
    expect((await told(pair.number)).changes).toContainEqual({ label: 'Total', from: '$220.47', to: '$212.85' })
  })

  it('a dearer one is refused with both prices, on a sent quote as on an accepted one, and nothing is written', async () => {
    const other = await aTube({ price: money(4501) })
    for (const pair of [await acceptedPair(), await sentPair()]) {
      const before = await quoteOf(pair.number)
      expect(await refusal(await asSeen(pair, other))).toBe(
        `${await markOf(other)} costs $45.01; quote ${before.number}, revision 1 says $45.00 for V3. The customer pays no more than was quoted without saying yes to it: revise the quote with ${await markOf(other)}, and let the customer answer that one. Nothing was saved.`,
      )
      expect(await quoteOf(pair.number)).toEqual(before)
      expect(await holdOf(other)).toEqual(FREE)
      expect((await holdOf(pair.ids[0])).job).toBe(pair.number)
    }
  })

  it('the agreed price is the measure, not what an exchange in between came to: $45.00 after $38.00 is taken', async () => {
    const pair = await acceptedPair()
    done(await exchange(await asSeen(pair, await aTube({ price: money(3800) }))))
    done(await exchange(await asSeen(pair, await aTube({ price: money(4500) })), later(22)))
    expect((await quoteOf(pair.number)).lines.filter(({ kind }) => kind === 'fee')).toEqual([])
  })

  it('the one that was quoted comes back at its quoted price, though it was marked up meanwhile', async () => {
    const pair = await acceptedPair()
    done(await exchange(await asSeen(pair, await aTube())))
    await database.tube.update({ where: { id: pair.ids[0] }, data: { price: money(9900) } })
    done(await exchange(await asSeen(pair, pair.ids[0]), later(22)))
    expect(await totalOf(pair.number)).toBe(22047)
  })

  it('nothing is agreed on a draft: the tube brings its own price, but one written by hand stays', async () => {
    const pair = await draftPair()
    const dear = await aTube({ price: money(6000) })
    done(await exchange(await asSeen(pair, dear)))
    const line = (await quoteOf(pair.number)).lines.find(({ socketPosition }) => socketPosition === 'V3')
    expect([line?.unitPrice, line?.text]).toEqual([6000, `6V6GT, mark ${await markOf(dear)}`])
    await database.quoteLine.update({ where: { id: line?.id ?? '' }, data: { unitPrice: money(5000) } })
    done(await exchange(await asSeen(pair, pair.ids[0]), later(22)))
    const back = (await quoteOf(pair.number)).lines.find(({ socketPosition }) => socketPosition === 'V3')
    expect([back?.unitPrice, back?.tubeId]).toEqual([5000, pair.ids[0]])
  })

  it('a revision begins with the tube that is meant, at what is charged for it, and the credit is gone into it', async () => {
    const pair = await acceptedPair()
    const other = await aTube({ price: money(3800), designation: '6V6GT' })
    done(await exchange(await asSeen(pair, other)))
    done(await reviseQuote(later(25), await shopOnFile(), pair.number))
    const draft = await quoteOf(pair.number)
    expect(draft.lines.map(({ text, unitPrice }) => [text, unitPrice])).toEqual([
      ['Set idle current', 9000],
      [`6V6GT, mark ${await markOf(other)}`, 3800],
      [`6V6GT, mark ${await markOf(pair.ids[1])}`, 4500],
    ])
    done(await fitTube(later(26), pair.number, 'V3'))
    done(await send(pair.number, 'hand-over', later(27)))
    done(await answer(pair.number, {}, later(28)))
    const accepted = await quoteOf(pair.number)
    // The tick of the tube that is in goes over to the revision, whatever its line says.
    expect(accepted.lines.find(({ tubeId }) => tubeId === other)?.doneBy).toBe('Ines')
  })
})

describe('what is held', () => {
  it('by a sent quote is held to the same day, and the draft holds nothing', async () => {
    const sent = await sentPair()
    const [until, other] = [(await holdOf(sent.ids[0])).until, await aTube()]
    done(await exchange(await asSeen(sent, other)))
    expect(await holdOf(other)).toEqual({ hold: 'held', job: sent.number, until })
    expect(await holdOf(sent.ids[0])).toEqual(FREE)
    const draft = await draftPair()
    const third = await aTube()
    done(await exchange(await asSeen(draft, third)))
    expect(await holdOf(third)).toEqual(FREE)
  })

  it('passes on with an answer taken back: the one that is meant waits, held', async () => {
    const pair = await acceptedPair()
    const other = await aTube()
    done(await exchange(await asSeen(pair, other)))
    const { version } = await quoteOf(pair.number)
    done(await undoAnswer(later(25), await shopOnFile(), { jobNumber: pair.number, version }))
    expect((await holdOf(other)).hold).toBe('held')
    expect(await holdOf(pair.ids[0])).toEqual(FREE)
  })

  it('a revision that names the tube as well is exchanged with the accepted quote, so that its yes brings nothing back', async () => {
    const pair = await acceptedPair()
    done(await reviseQuote(later(19), await shopOnFile(), pair.number))
    const other = await aTube()
    done(await exchange(await asSeen(pair, other)))
    const quotes = await listQuotes((await jobOf(pair.number)).id)
    expect(
      quotes.map(({ state, lines }) => [state, lines.find((line) => line.socketPosition === 'V3')?.tubeId]),
    ).toEqual([
      ['draft', other],
      ['accepted', other],
    ])
    // On the revision alone, what was accepted stays reserved.
    const third = await aTube({ price: money(9000) })
    done(await exchange(await asSeen(pair, third, { latest: true }), later(22)))
    expect(await holdOf(other)).toEqual({ hold: 'reserved', job: pair.number, until: null })
    expect(await holdOf(third)).toEqual(FREE)
  })

  it('one that was lost to another job is replaced, and stays where it is', async () => {
    const pair = await sentPair()
    const { id } = await jobOf((await sentPair()).number)
    await database.tube.update({ where: { id: pair.ids[0] }, data: { heldForJob: id, heldByQuoteId: null } })
    const before = await holdOf(pair.ids[0])
    done(await exchange(await asSeen(pair, await aTube())))
    expect(await holdOf(pair.ids[0])).toEqual(before)
  })
})

describe('two at once', () => {
  it('for the same tube: one job has it, the other is told which, and keeps what it had', async () => {
    const [one, two] = [await acceptedPair(), await acceptedPair()]
    const wanted = await aTube()
    const asked = [await asSeen(one, wanted), await asSeen(two, wanted)] as const
    const both = await Promise.all(asked.map((each) => exchange(each)))
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    const [winner, loser] = both[0]?.ok ? [one, two] : [two, one]
    const lost = both.find(({ ok }) => !ok)
    expect(lost).toMatchObject({
      fault: { code: 'plan-stale', changes: [{ what: 'held', mark: await markOf(wanted), jobNumber: winner.number }] },
    })
    expect((await holdOf(wanted)).job).toBe(winner.number)
    expect(await holdOf(loser.ids[0])).toEqual({ hold: 'reserved', job: loser.number, until: null })
    expect(await holdOf(winner.ids[0])).toEqual(FREE)
  })

  it('of the same socket: the second is told who saved first, and what', async () => {
    const pair = await acceptedPair()
    const [x, y] = [await aTube(), await aTube()]
    const [first, second] = [await asSeen(pair, x), await asSeen(pair, y)]
    const both = await Promise.all([exchange(first, later(21, 'Ines')), exchange(second, later(21, 'Bero'))])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect(both.find(({ ok }) => !ok)).toMatchObject({ fault: { code: 'stale', changes: [{ label: 'V3' }] } })
  })
})

describe('what changed since the page was opened is told, and nothing is written', () => {
  const since = (what: string) => `Nothing was written down. Since this was worked out: ${what}. Work it out again.`

  it('sold, tested again, repriced: each by its mark with what it is now', async () => {
    const pair = await acceptedPair()
    const other = await aTube()
    const asked = await asSeen(pair, other)
    const mark = await markOf(other)
    done(
      await addTubeTest(later(20), {
        tubeId: other,
        test: testEntry({ gridVoltage: volts(-12.5), sections: [section(39, 3.6)] }),
        reject: false,
      }),
    )
    await database.tube.update({ where: { id: other }, data: { price: money(4400) } })
    const before = await quoteOf(pair.number)
    expect(await refusal(asked)).toBe(
      since(
        `${mark} was tested again: 45 mA and 4.1 mA/V on May 6, 2031, then 39 mA and 3.6 mA/V on May 6, 2031; the price of ${mark} was changed`,
      ),
    )
    const { version } = (await findTube(other)) ?? { version: 0 }
    done(await moveTube(later(20), { tubeId: other, version, to: 'sold', reason: 'Over the counter' }))
    expect(await refusal(asked)).toBe(since(`${mark} is sold now`))
    expect(await quoteOf(pair.number)).toEqual(before)
    expect(await holdOf(pair.ids[0])).toEqual({ hold: 'reserved', job: pair.number, until: null })
  })

  it('the one that was to go: let go by somebody, or held by another job', async () => {
    const pair = await acceptedPair()
    const asked = await asSeen(pair, await aTube())
    const mark = await markOf(pair.ids[0])
    await database.tube.update({
      where: { id: pair.ids[0] },
      data: { hold: '', heldForJob: null, heldByQuoteId: null },
    })
    expect(await refusal(asked)).toBe(since(`${mark} is no longer held for job ${pair.number}`))
    const { id, number } = await jobOf((await sentPair()).number)
    await database.tube.update({ where: { id: pair.ids[0] }, data: { hold: 'held', heldForJob: id } })
    expect(await refusal(asked)).toBe(since(`${mark} is held for job ${number} now`))
  })

  it('the one that stays was tested again, and the amplifier was read', async () => {
    const pair = await acceptedPair()
    const asked = await asSeen(pair, await aTube())
    done(
      await addTubeTest(later(20), {
        tubeId: pair.ids[1],
        test: testEntry({ gridVoltage: volts(-12.5), sections: [section(50, 4.4)] }),
        reject: false,
      }),
    )
    done(await read(pair.number, { phase: 'before', step: later(20) }))
    expect(await refusal(asked)).toBe(
      since(
        `the amplifier was read again, so what its sockets ask for may have changed; ${await markOf(pair.ids[1])} was tested again: 45 mA and 4.1 mA/V on May 6, 2031, then 50 mA and 4.4 mA/V on May 6, 2031`,
      ),
    )
  })
})

describe('refused', () => {
  it('a tube that sits in the socket: the work step takes it out, and then it is exchanged', async () => {
    const pair = await acceptedPair()
    const other = await aTube()
    const asked = await asSeen(pair, other)
    done(await fitTube(later(20), pair.number, 'V3'))
    expect(await refusal(asked)).toBe(
      `${await markOf(pair.ids[0])} sits in V3 already, so this is a change at the bench: in the work step press “Take out again”, then exchange it there.`,
    )
    done(await takeTubeOut(later(21), pair.number, 'V3'))
    done(await exchange(await asSeen(pair, other), later(22)))
    done(await fitTube(later(23), pair.number, 'V3'))
  })

  it('one of another family, one never tested, a reject, one too old at its test: with the reason and its figures', async () => {
    const pair = await acceptedPair()
    const wrong = await tubeInStock()
    expect(await refusal(await asSeen(pair, wrong))).toBe(
      `${await markOf(wrong)} may not go into V3: Type 6L6; the sockets want 6V6. Nothing was saved.`,
    )
    const old = await aTube({}, { day: '2030-01-01' as never })
    expect(await refusal(await asSeen(pair, old))).toContain('may not go into V3: Tested')
    const reject = await aTube({ condition: 'reject' })
    expect(await refusal(await asSeen(pair, reject))).toContain('is marked as a reject now')
  })

  it('one that stands for V4, and the tube itself', async () => {
    const pair = await acceptedPair()
    expect(await refusal({ ...(await asSeen(pair, pair.ids[1])), beside: [] })).toBe(
      `${await markOf(pair.ids[1])} stands for V4 on the same quote. One tube sits in one socket.`,
    )
    const itself = await asSeen(pair, pair.ids[0])
    expect(await refusal(itself)).toBe(`${await markOf(pair.ids[0])} stands for V3 already. Choose another tube.`)
  })

  it('at the counter once it is ordered; before that it is a choice like another', async () => {
    const pair = await acceptedPair()
    const step = atCounter('Odo', later(21).now)
    expect(await exchange(await asSeen(pair, await aTube()), step)).toMatchObject({
      fault: { code: 'not-your-duty', duty: 'bench-work' },
    })
    done(await exchange(await asSeen(await sentPair(), await aTube()), step))
  })

  it('a quote whose last day is over, one declined, a job that is closed or released', async () => {
    const [sent, other] = [await sentPair(), await aTube()]
    const asked = await asSeen(sent, other)
    expect(await exchange(asked, later(40 * 24 * 60))).toMatchObject({ fault: { code: 'validity-over' } })
    done(await answer(sent.number, { answer: 'declined' }))
    expect(await exchange(await asSeen(sent, other))).toMatchObject({ fault: { code: 'quote-not-waiting' } })
    const accepted = await acceptedPair()
    const late = await asSeen(accepted, other)
    await database.job.update({ where: { number: accepted.number }, data: { state: 'ready' } })
    expect(await exchange(late)).toMatchObject({ fault: { code: 'work-closed' } })
    await database.job.update({ where: { number: accepted.number }, data: { state: 'collected' } })
    expect(await exchange(late)).toMatchObject({ fault: { code: 'job-closed' } })
    expect(await exchange({ ...late, jobNumber: sent.number })).toMatchObject({ fault: { code: 'not-found' } })
  })
})

describe('what is claimed of the set', () => {
  it('follows the tubes: a new claim for the new pair, none without a statement, the old one when they are back', async () => {
    const pair = await acceptedPair(MATCHED_PAIR)
    const other = await aTube()
    const [a, b, c] = await Promise.all([pair.ids[0], pair.ids[1], other].map(markOf))
    const was = (await quoteOf(pair.number)).matches
    expect(marksOf(was)).toEqual([[a, b]])
    done(await exchange({ ...(await asSeen(pair, other)), match: { ...MATCHED_PAIR, match: 'current-only' } }))
    const now = (await quoteOf(pair.number)).matches
    expect(marksOf(now)).toEqual([
      [a, b],
      [c, b],
    ])
    expect(now[1]?.statement.match).toBe('current-only')
  })
})
