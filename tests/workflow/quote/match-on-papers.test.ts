import { beforeAll, describe, expect, it } from 'vitest'
import type { Paper } from '@/lib/documents/paper'
import { paperText } from '@/lib/documents/paper-text'
import { pickupPaper } from '@/lib/documents/pickup-sheet'
import type { MatchStatement } from '@/lib/domain/matching/proposal'
import { money } from '@/lib/domain/money'
import { amps, ratio } from '@/lib/domain/units'
import { db } from '@/lib/store/database'
import { findJobHead } from '@/lib/store/job-head'
import { listMailsOfJob } from '@/lib/store/mail'
import { findPaper, listPapers } from '@/lib/store/paper'
import { findTube } from '@/lib/store/tube'
import { pickupFacts } from '@/lib/workflow/handover/pickup-facts'
import { keepTube } from '@/lib/workflow/stock/keep-tube'
import { fitTube, takeTubeOut } from '@/lib/workflow/work/fit-tubes'
import { issueWorkOrder } from '@/lib/workflow/work/issue-work-order'
import { acceptedPair, asSeen, aTube, draftPair, exchange, type Paired } from '@/tests/support/exchanged-job'
import { freshDatabase } from '@/tests/support/fresh-database'
import { MATCHED_PAIR } from '@/tests/support/matched-pair'
import { answer, done, jobOf, send, shopOnFile } from '@/tests/support/quoted-job'
import { openStockedShop, tubeDetails } from '@/tests/support/stocked-shop'
import { fitBoth, later } from '@/tests/support/tested-job'

freshDatabase()
beforeAll(() => openStockedShop())

const PREDICTED: MatchStatement = {
  ...MATCHED_PAIR,
  predicted: {
    readOn: '2031-05-05',
    lowest: amps(0.0371),
    highest: amps(0.0383),
    plusMinus: amps(0.0042),
    apartPlusMinus: amps(0.0009),
    instruments: ['Bench tester 1', 'Bench tester 2'],
  },
}

const markOf = async (id: string) => (await findTube(id))?.mark ?? ''

async function frozen(number: string, kind: Parameters<typeof listPapers>[1]): Promise<string> {
  const [last] = await listPapers((await jobOf(number)).id, kind)
  const paper = last && (await findPaper(last.id))
  if (!paper) throw new Error(`No ${kind}`)
  return paperText(paper.view as Paper)
}

async function workOrder(number: string, minutes = 15): Promise<string> {
  done(
    await issueWorkOrder(later(minutes), await shopOnFile(), { jobNumber: number, address: 'https://bench.example' }),
  )
  return frozen(number, 'work-order')
}

async function pickupSheet(number: string): Promise<string> {
  const head = await findJobHead(number)
  if (!head) throw new Error('no job')
  const closing = { outcome: { kind: 'repaired' }, collector: null, itemsNote: '', owesNote: '' } as const
  return paperText(pickupPaper(await pickupFacts(db(), await shopOnFile(), head, later(60).now, closing)))
}

/** Every paper and the mail that a job's set comes to. */
async function everyPaper(
  statement: MatchStatement | null,
): Promise<Record<string, string> & { readonly marks: string }> {
  const pair = await draftPair(statement)
  const { number, ids } = pair
  done(await send(number, 'mail'))
  const [mail] = await listMailsOfJob((await jobOf(number)).id)
  done(await answer(number))
  const order = await workOrder(number)
  await fitBoth(number)
  const marks = (await Promise.all(ids.map(markOf))).join(' with ')
  return {
    marks,
    quote: await frozen(number, 'quote'),
    mail: `${mail?.subject}\n${mail?.body}`,
    order,
    pickup: await pickupSheet(number),
  }
}

const claims = (text: string | undefined) => (text ?? '').split('\n').filter((line) => /match/i.test(line))

/** "Matched" is void without each of these. */
const DATE = /tested May 6, 2031 on/
const TOLERANCE = /plate current within 1\.20 mA \(tolerance 5 mA\)/

describe('“matched” on paper', () => {
  it('at the test point: date, instrument, the whole test point and both tolerances, on quote and pickup sheet alike', async () => {
    const { marks, quote, pickup, mail, order } = await everyPaper(MATCHED_PAIR)
    expect(claims(quote)).toEqual([
      `Matched 6V6GT, ${marks}: tested May 6, 2031 on Bench tester 1 at 250 V plate, 250 V screen, −12.5 V grid; plate current within 1.20 mA (tolerance 5 mA), transconductance within 3 % (tolerance 10 %).`,
    ])
    expect(claims(pickup)).toEqual(claims(quote))
    expect([claims(mail), claims(order)]).toEqual([[], []])
  })

  it('by current alone: the same, and not a word of transconductance', async () => {
    const spreads = { ...MATCHED_PAIR.spreads, transconductance: null }
    const { quote, pickup } = await everyPaper({ ...MATCHED_PAIR, match: 'current-only', spreads })
    for (const [claim, ...others] of [claims(quote), claims(pickup)]) {
      expect(others).toEqual([])
      for (const part of [DATE, TOLERANCE, /on Bench tester 1 at 250 V/]) expect(claim).toMatch(part)
      expect(claim).not.toMatch(/transconductance/)
    }
  })

  it('as predicted: instead of a test point the amplifier, as read when and how well known; both instruments', async () => {
    const { quote, pickup } = await everyPaper(PREDICTED)
    for (const [claim, ...others] of [claims(quote), claims(pickup)]) {
      expect(others).toEqual([])
      for (const part of [DATE, TOLERANCE, /on Bench tester 1 and Bench tester 2;/]) expect(claim).toMatch(part)
      expect(claim).toContain(
        'by the idle predicted in this amplifier as read May 5, 2031, known to ±4.20 mA, their differences to ±0.90 mA (95 %), not measured',
      )
      expect(claim).not.toMatch(/at 250 V/)
    }
  })

  it('readings carried over from another tester are named on each, with what they and their difference are known to', async () => {
    const carried: MatchStatement = {
      ...MATCHED_PAIR,
      carried: [
        {
          ...{ marks: ['T-2'], from: 'Bench tester 2' },
          ...{ current: { factor: 0.9615, share: 0.031 }, slope: { factor: 1, share: 0.04 } },
        },
      ],
      apart: { plateCurrent: amps(0.0012), transconductance: ratio(0.04) },
    }
    const { marks: _, ...papers } = await everyPaper(carried)
    const said = Object.values(papers).flatMap(claims)
    expect(said).toHaveLength(2)
    for (const claim of said) {
      expect(claim).toContain('and compared as on Bench tester 1 at 250 V')
      expect(claim).toContain(
        'T-2 read on Bench tester 2, carried over to Bench tester 1 by reference readings on both, each to ±3.1 % (95 %)',
      )
      expect(claim).toContain('differences across the instruments to ±1.20 mA (95 %)')
    }
  })

  it.each([
    ['uncertain, as predicted', { ...PREDICTED, match: 'uncertain' }],
    ['uncertain, at the test point', { ...MATCHED_PAIR, match: 'uncertain' }],
    ['outside', { ...MATCHED_PAIR, match: 'outside' }],
    ['outside, as predicted', { ...PREDICTED, match: 'outside' }],
    ['not said, as it cannot be', null],
  ] as const)(
    '%s: neither quote, mail, work order nor pickup sheet says “match”, though the tubes stand on them',
    async (_, statement) => {
      const { marks, ...papers } = await everyPaper(statement)
      for (const text of Object.values(papers)) expect(claims(text)).toEqual([])
      for (const mark of marks.split(' with '))
        for (const text of [papers.quote, papers.order, papers.pickup]) expect(text).toContain(mark)
    },
  )
})

describe('papers after an exchange', () => {
  async function exchanged(statement: MatchStatement | null, into: string): Promise<Paired> {
    const pair = await acceptedPair(MATCHED_PAIR)
    done(await exchange({ ...(await asSeen(pair, into, { step: later(5) })), match: statement }, later(6)))
    return pair
  }

  it('name the tube that is really there, and what was quoted; the quote that went out stays as it was', async () => {
    const other = await aTube()
    const pair = await acceptedPair(MATCHED_PAIR)
    const [a, b, c] = await Promise.all([pair.ids[0], pair.ids[1], other].map(markOf))
    const before = await frozen(pair.number, 'quote')
    const earlier = await workOrder(pair.number, 5)
    done(await exchange({ ...(await asSeen(pair, other, { step: later(6) })), match: PREDICTED }, later(7)))
    expect(await frozen(pair.number, 'quote')).toBe(before)
    const order = await workOrder(pair.number)
    expect(earlier).toContain(`6V6GT, mark ${a}`)
    expect(order).toContain(`6V6GT, mark ${c}`)
    expect(order).toContain(`V3: quoted 6V6GT, mark ${a}; to fit 6V6GT, mark ${c}.`)
    expect(order.split('\n').filter((line) => line.includes(a ?? ''))).toHaveLength(1)
    await fitBoth(pair.number)
    expect(await workOrder(pair.number, 25)).toContain(`V3: quoted 6V6GT, mark ${a}; fitted 6V6GT, mark ${c}.`)
    const pickup = await pickupSheet(pair.number)
    expect(pickup).toContain(`V3: quoted 6V6GT, mark ${a}; fitted 6V6GT, mark ${c}.`)
    // The claim that was quoted is not made of the set that went in.
    expect(claims(pickup)).toHaveLength(1)
    expect(claims(pickup)[0]).toMatch(
      new RegExp(`^Matched 6V6GT, (${c} with ${b}|${b} with ${c}): .*predicted in this amplifier`),
    )
  })

  it('another designation than quoted is said to be one, with its own on the drawing and in the table', async () => {
    const other = await aTube({ designation: '6V6' })
    const pair = await exchanged(null, other)
    const [a, c] = [await markOf(pair.ids[0]), await markOf(other)]
    const said = `V3: quoted 6V6GT, mark ${a}; to fit 6V6, mark ${c}, another designation than quoted.`
    expect(await workOrder(pair.number)).toContain(said)
    await fitBoth(pair.number)
    expect(await pickupSheet(pair.number)).toContain(said.replace('to fit', 'fitted'))
  })

  it('an uncertain set after it is no match on the pickup sheet, and back as quoted the first claim stands again', async () => {
    const other = await aTube()
    const pair = await exchanged({ ...PREDICTED, match: 'uncertain' }, other)
    await fitBoth(pair.number)
    expect(claims(await pickupSheet(pair.number))).toEqual([])
    done(await takeTubeOut(later(30), pair.number, 'V3'))
    done(await exchange(await asSeen(pair, pair.ids[0], { step: later(31) }), later(32)))
    done(await fitTube(later(33), pair.number, 'V3'))
    const pickup = await pickupSheet(pair.number)
    expect(claims(pickup)).toHaveLength(1)
    expect(pickup).not.toContain('quoted 6V6GT')
  })

  it('the consent printed is the sum that was agreed, and the cheaper tube is what is owed less: $220.47 and $212.85', async () => {
    const pair = await exchanged(null, await aTube({ price: money(3800) }))
    expect(await workOrder(pair.number)).toContain('Consent: $220.47: Mirela Thorn')
    await fitBoth(pair.number)
    expect(await pickupSheet(pair.number)).toContain('Total: $212.85')
  })

  it('a mark corrected after the quote is told as what it was quoted as, no exchange being claimed', async () => {
    const pair = await acceptedPair()
    const tube = await findTube(pair.ids[0])
    if (!tube) throw new Error('no tube')
    const details = tubeDetails({ designation: '6V6GT', mark: 'T-9001' })
    done(await keepTube(later(5), { id: tube.id, version: tube.version, details, test: null }))
    expect(await workOrder(pair.number)).toContain(`V3: quoted 6V6GT, mark ${tube.mark}; to fit 6V6GT, mark T-9001.`)
  })
})
