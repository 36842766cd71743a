import highsLoader, { type Highs } from 'highs'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Candidate } from '@/lib/domain/matching/candidate'
import { money } from '@/lib/domain/money'
import { fail } from '@/lib/domain/result'
import { amps, ratio, volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { shareOut } from '@/lib/planning/share-out/share-out'
import { orderProblem } from '@/lib/planning/sharing/order-problem'
import type { ShareJob, ShareOrder, ShareStock } from '@/lib/planning/sharing/share-order'
import { sharePlan } from '@/lib/planning/sharing/share-plan'
import {
  buyTexts,
  firstComeText,
  freedTexts,
  proofText,
  relaxedTexts,
  servedText,
} from '@/lib/planning/sharing/share-text'
import { AS_OF, aDemand, aTest, aTube, readTube, someLimits } from '@/tests/domain/matching/tubes'

let highs: Highs
beforeAll(async () => {
  highs = await highsLoader()
})

const WORDS = wordsFor('US')
const limits = someLimits({ yardsticks: { plateCurrent: amps(0.005), transconductance: ratio(0.1) }, asOf: AS_OF })
const wants = (jobNumber: string, ...counts: number[]): ShareJob => ({
  jobNumber,
  basis: null,
  readOn: '',
  groups: counts.map((count, at) => ({
    group: `g${at}`,
    designation: '6L6GC',
    demand: aDemand(count),
    sockets: [],
    circuit: fail('Not read.'),
  })),
})
const free = (candidate: Candidate): ShareStock => ({ candidate, stocked: null, heldFor: null })
const order = (
  jobs: readonly ShareJob[],
  stock: readonly ShareStock[],
  over: Partial<ShareOrder> = {},
): ShareOrder => ({
  jobs,
  stock,
  limits,
  view: null,
  seconds: 20,
  ...over,
})

function plan(asked: ShareOrder) {
  const built = orderProblem(asked)
  return sharePlan(asked, built, shareOut(highs, built.problem, { seconds: 20, clock: () => 0 }))
}

const marksOf = (asked: ShareOrder) =>
  plan(asked).jobs.map(({ sets }) =>
    sets ? sets.map(({ option }) => option.tubes.map(({ candidate }) => candidate.mark).sort()) : null,
  )

describe('which tubes may stand where', () => {
  it('a tube held for one job is free for that job and for no other', () => {
    const held = { ...readTube('T-2', 72.1, 6), state: { kind: 'reserved', holder: 'job 1002' } } as const
    const stock = [
      free(readTube('T-1', 72, 6)),
      { candidate: held, stocked: null, heldFor: '1002' },
      free(readTube('T-3', 76, 6)),
    ]
    expect(marksOf(order([wants('1001', 2)], stock))).toEqual([[['T-1', 'T-3']]])
    expect(marksOf(order([wants('1002', 2)], stock))).toEqual([[['T-1', 'T-2']]])
  })

  it('5 mA and 10 % are bounds, inclusive: 5.0 mA apart is a pair, 5.001 mA is none', () => {
    const pair = (second: number) => [free(readTube('T-1', 70, 6)), free(readTube('T-2', second, 6))]
    expect(marksOf(order([wants('1001', 2)], pair(75)))).toEqual([[['T-1', 'T-2']]])
    expect(marksOf(order([wants('1001', 2)], pair(75.001)))).toEqual([null])
    const slope = (second: number) => [free(readTube('T-1', 70, 6)), free(readTube('T-2', 70, second))]
    expect(marksOf(order([wants('1001', 2)], slope(6.6)))).toEqual([[['T-1', 'T-2']]])
    expect(marksOf(order([wants('1001', 2)], slope(6.601)))).toEqual([null])
  })

  it('the price cap is for a set: two at 40.00 pass 80.00 and not 79.99', () => {
    const stock = [free(readTube('T-1', 70, 6)), free(readTube('T-2', 70, 6))]
    const capped = (priceCap: number) => ({ limits: { ...limits, priceCap: money(priceCap) } })
    expect(marksOf(order([wants('1001', 2)], stock, capped(8000)))).toEqual([[['T-1', 'T-2']]])
    expect(marksOf(order([wants('1001', 2)], stock, capped(7999)))).toEqual([null])
  })

  it('never mixes test points, even where both read the same', () => {
    const colder = (mark: string) =>
      aTube(mark, {
        test: aTest({ testPoint: { plateVoltage: volts(300), screenVoltage: volts(250), gridVoltage: volts(-14) } }),
      })
    const two = [free(aTube('T-1')), free(colder('T-2'))]
    expect(marksOf(order([wants('1001', 2)], two))).toEqual([null])
    const four = [...two, free(colder('T-3')), free(aTube('T-4'))]
    expect(
      marksOf(order([wants('1001', 2), wants('1002', 2)], four))
        .flat()
        .sort(),
    ).toEqual([
      ['T-1', 'T-4'],
      ['T-2', 'T-3'],
    ])
  })

  it('lists with its reason what it cannot say: untested, too old, other point, other instrument, spoken for', () => {
    const stock = [
      ...['T-1', 'T-2', 'T-3'].map((mark) => free(aTube(mark))),
      free(aTube('T-4', { test: null })),
      free(aTube('T-5', { test: aTest({ testedAt: '2029-05-01' }) })),
      free(aTube('T-6', { test: aTest({ instrument: 'Old tester' }) })),
      free(
        aTube('T-7', {
          test: aTest({ testPoint: { plateVoltage: volts(300), screenVoltage: volts(250), gridVoltage: volts(-14) } }),
        }),
      ),
      free(aTube('T-8', { state: { kind: 'reserved', holder: 'the draft quote of job 1009' } })),
      free(aTube('T-9', { family: 'EL34' })),
    ]
    const { leftOut } = orderProblem(order([wants('1001', 2)], stock))
    expect(leftOut.map(({ candidate, reasons }) => [candidate.mark, ...reasons.map(({ code }) => code)])).toEqual([
      ['T-4', 'untested'],
      ['T-5', 'test-too-old'],
      ['T-6', 'other-instrument'],
      ['T-7', 'other-test-point'],
      ['T-8', 'reserved'],
    ])
  })
})

describe('readings of two testers', () => {
  const figure = (name: 'plateCurrent' | 'transconductance') =>
    ({ from: 'Old tester', to: 'Bench tester 1', figure: name, factor: 0.96, readingUncertainty: 0.03 }) as const
  const carrying = { corrections: [figure('plateCurrent'), figure('transconductance')] }
  const old = (mark: string, milliamps: number) =>
    free(aTube(mark, { test: aTest({ instrument: 'Old tester', plateCurrent: amps(milliamps / 1000) }) }))
  const stock = [
    free(readTube('T-1', 70, 6)),
    free(readTube('T-2', 76, 6)),
    free(readTube('T-3', 82, 6)),
    old('T-4', 73),
  ]

  it('73 mA on the old tester are 70.1 on the other: the pair is T-1 with T-4, which says how far that is known', () => {
    const asked = order([wants('1001', 2)], stock, { limits: { ...limits, carrying } })
    const [job] = plan(asked).jobs
    const option = job?.sets?.[0]?.option
    expect(option?.tubes.map(({ candidate }) => candidate.mark)).toEqual(['T-1', 'T-4'])
    expect(option?.instrument).toBe('Bench tester 1')
    expect(1000 * (option?.doubt ?? 0)).toBeCloseTo(0.03 * 70.08, 6)
  })

  it('without a correction it cannot say, and tells what would change that', () => {
    const { jobs, leftOut } = plan(order([wants('1001', 2)], stock))
    expect(jobs[0]?.sets).toBeNull()
    expect(leftOut.find(({ candidate }) => candidate.mark === 'T-4')?.reasons).toMatchObject([
      { code: 'other-instrument', lacks: 'any' },
    ])
  })
})

describe('the plan', () => {
  const six = [70, 70.5, 71, 71.5, 80, 80.4].map((milliamps, at) => free(readTube(`T-${at + 1}`, milliamps, 6)))

  it('the quad is not broken for the pair that came first, and says so', () => {
    // The closest pair of all is in the quad: 80 and 80.4 are closer still, so move them apart.
    const stock = [70, 70.2, 70.4, 70.6, 80, 84].map((milliamps, at) => free(readTube(`T-${at + 1}`, milliamps, 6)))
    const shared = plan(order([wants('1001', 2), wants('1002', 4)], stock))
    expect(
      shared.jobs.map(({ sets }) => sets?.[0]?.option.tubes.map(({ candidate }) => candidate.mark).sort()),
    ).toEqual([
      ['T-5', 'T-6'],
      ['T-1', 'T-2', 'T-3', 'T-4'],
    ])
    expect(servedText(shared)).toBe('All 2 jobs get their sets.')
    expect(firstComeText(shared.proof)).toBe('First come, first served would serve 1 job: 1 fewer.')
    expect(proofText(shared).join(' ')).toMatch(/^No other way of serving as many gives closer sets.*\(proved\)\.$/)
  })

  it('of sets as close the cheaper goes: the dear tube is kept', () => {
    const stock = [free(readTube('T-1', 70, 6, 9000)), free(readTube('T-2', 70, 6)), free(readTube('T-3', 70, 6))]
    expect(marksOf(order([wants('1001', 2)], stock))).toEqual([[['T-2', 'T-3']]])
  })

  it('a job whose second group finds nothing gives its first set to others', () => {
    const shared = plan(order([wants('1001', 4, 4), wants('1002', 4)], six))
    expect(shared.jobs.map(({ sets }) => sets === null)).toEqual([true, false])
    expect(shared.proof).toMatchObject({ jobsServed: 1, jobsAtMost: 1 })
  })

  it('says what to buy: one more at 65 to 74.4 mA goes with 69.4 and 70 in a trio', () => {
    const stock = [free(readTube('T-1', 69.4, 6)), free(readTube('T-2', 70, 6.3))]
    const shared = plan(order([wants('1001', 3)], stock))
    expect(shared.buy).toMatchObject([
      { jobNumber: '1001', tubes: 1, lines: [{ count: 1, near: { marks: ['T-1', 'T-2'] } }] },
    ])
    const format = { words: WORDS, formatMoney: String }
    // Highest read less 5 mA to lowest read plus 5 mA; 6.3 / 1.1 = 5.7273 to 6 × 1.1 = 6.6 mA/V.
    expect(buyTexts(shared.buy[0] as never, format)[0]).toMatch(
      /^1 more 6L6GC for “g0”, read 65 to 74.4 mA and 5.73 to 6.6 mA\/V on Bench tester 1 at .*, to go with T-1, T-2\.$/,
    )
    expect(freedTexts(shared.buy)).toEqual(['6L6GC: 1 more would free 1 job, if they read as said below.'])
  })

  it('without any tube in stock every job goes without and all of them are to buy', () => {
    const shared = plan(order([wants('1001', 2), wants('1002', 1)], []))
    expect(shared.proof).toMatchObject({ jobsServed: 0, jobsAtMost: 0 })
    expect(shared.buy.map(({ jobNumber, tubes }) => [jobNumber, tubes])).toEqual([
      ['1002', 1],
      ['1001', 2],
    ])
    expect(freedTexts(shared.buy)).toEqual([
      '6L6GC: 1 more would free 1 job; 3 more would free 2 jobs, if they read as said below.',
    ])
  })

  it('where no sharing could serve a job, it says which limit stands in the way', () => {
    const old = (mark: string) => free(aTube(mark, { test: aTest({ testedAt: '2029-05-01' }) }))
    const shared = plan(order([wants('1001', 2)], [old('T-1'), old('T-2'), free(aTube('T-3'))]))
    expect(shared.jobs[0]?.impossible).toEqual([
      { group: 'g0', without: [{ limit: 'test-age', sets: 1 }], closest: null, untested: 0, typeRefused: false },
    ])
    const wide = plan(order([wants('1001', 2)], [free(readTube('T-1', 70, 6)), free(readTube('T-2', 76.2, 6))]))
    expect(relaxedTexts(wide.jobs[0]?.impossible[0] as never, { words: WORDS, formatMoney: String })).toEqual([
      'Widen the tolerances: the closest set there is lies 6.2 mA apart, 0 % in transconductance.',
    ])
  })

  it('a swap is what nobody was given, with what it loses', () => {
    const stock = [70, 70.1, 74, 75].map((milliamps, at) => free(readTube(`T-${at + 1}`, milliamps, 6)))
    const [job] = plan(order([wants('1001', 2)], stock)).jobs
    const swap = job?.sets?.[0]?.swap
    expect(swap?.tubes.map(({ candidate }) => candidate.mark)).toEqual(['T-3', 'T-4'])
    expect(swap?.lost?.plateCurrent).toBeCloseTo(0.0009, 9)
  })

  it('a set of unread transconductance never mixes with read ones and is charged a yardstick', () => {
    const stock = [
      ...[70, 74].map((milliamps, at) => free(readTube(`T-${at + 1}`, milliamps, 6))),
      ...[70, 70].map((milliamps, at) => free(readTube(`U-${at + 1}`, milliamps, null))),
    ]
    // 4 mA of 5 counts 0.8 yardsticks, the unread pair 0 and 1.
    expect(marksOf(order([wants('1001', 2)], stock))).toEqual([[['T-1', 'T-2']]])
  })
})

describe('laws over 30 generated orders', () => {
  it('no tube twice, none held elsewhere, every set within the yardsticks', () => {
    for (let seed = 1; seed <= 30; seed += 1) {
      let state = seed
      const next = (below: number) => {
        state = (Math.imul(state, 1664525) + 1013904223) >>> 0
        return Math.floor((state / 2 ** 32) * below)
      }
      const stock = Array.from({ length: 14 }, (_, at): ShareStock => {
        const tube = readTube(`T-${at}`, 66 + next(120) / 10, 5.5 + next(12) / 10, 3000 + 500 * next(5))
        if (next(5) > 0) return free(tube)
        return {
          candidate: { ...tube, state: { kind: 'reserved', holder: 'job 1000' } },
          stocked: null,
          heldFor: next(2) ? '1000' : '9999',
        }
      })
      const jobs = Array.from({ length: 4 }, (_, at) => wants(String(1000 + at), [1, 2, 2, 4][next(4)] as number))
      const { jobs: planned } = plan(order(jobs, stock))
      const used = planned.flatMap(({ jobNumber, sets }) =>
        (sets ?? []).flatMap(({ option }) =>
          option.tubes.map(({ candidate }) => ({ jobNumber, id: candidate.tubeId })),
        ),
      )
      expect(new Set(used.map(({ id }) => id)).size, `seed ${seed}`).toBe(used.length)
      for (const { jobNumber, id } of used) {
        const there = stock.find(({ candidate }) => candidate.tubeId === id)
        if (there?.candidate.state.kind === 'reserved') expect(there.heldFor, `seed ${seed}`).toBe(jobNumber)
      }
      for (const { sets } of planned) for (const { option } of sets ?? []) expect(option.match).toBe('both')
    }
  })
})
