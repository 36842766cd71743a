/** What the page of an exchange offers, out of what is kept and of what is read briefly: the same as from all records, tried one by one. */
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { predictionsIn } from '@/app/jobs/[jobNumber]/bench/group-circuit'
import { comparedSets, setWith } from '@/app/jobs/[jobNumber]/tubes/exchange/reckoning/compared-sets'
import { type ExchangeView, exchangeView } from '@/app/jobs/[jobNumber]/tubes/exchange/reckoning/exchange-view'
import { priceWith } from '@/app/jobs/[jobNumber]/tubes/exchange/reckoning/looked'
import { offersOf } from '@/app/jobs/[jobNumber]/tubes/exchange/reckoning/offers'
import type { Limits } from '@/app/jobs/[jobNumber]/tubes/limits-form'
import { byBalance } from '@/lib/domain/matching/balanced-sections'
import type { Candidate, MatchLimits } from '@/lib/domain/matching/candidate'
import { carryTarget } from '@/lib/domain/matching/carried-stock'
import { naturalOrder } from '@/lib/domain/matching/natural-order'
import { predictedTube } from '@/lib/domain/matching/predicted-tube'
import { money } from '@/lib/domain/money'
import { candidateOf, candidatesOf, twinOf } from '@/lib/domain/stock/candidate-of'
import { unfitFor } from '@/lib/domain/stock/unfit-for'
import { volts } from '@/lib/domain/units'
import { findCarrying } from '@/lib/store/carrying'
import { inTransaction } from '@/lib/store/database'
import { findLatestQuote } from '@/lib/store/quote'
import { listStockForFamily, setHold } from '@/lib/store/tube'
import { addTubeTest } from '@/lib/workflow/stock/add-tube-test'
import { chooseTubes } from '@/lib/workflow/tubes/choose-tubes'
import { replaceOne } from '@/tests/domain/matching/replacing/replace-one'
import { freshDatabase } from '@/tests/support/fresh-database'
import { jobInCircuit } from '@/tests/support/job-in-circuit'
import { atBench, NOW } from '@/tests/support/person-at-work'
import { done, draftWith, jobOf, shopOnFile } from '@/tests/support/quoted-job'
import { openStockedShop, section, testEntry, tubeInStock } from '@/tests/support/stocked-shop'

const database = freshDatabase()

const LIMITS: Limits = {
  ...{ age: 365, cap: null, over: false, one: false, at: 'amp', on: '' },
  ...{ typed: { age: '365', cap: '' }, faults: [] },
}

type Asking = { readonly position?: string; readonly mark?: string; readonly limits?: Partial<Limits> }

async function viewed({ position = 'V1', mark = '', limits = {} }: Asking): Promise<ExchangeView> {
  const asked = { position, mark, work: false }
  const given = { job: await jobOf(number), shop: await shopOnFile(), asked, limits: { ...LIMITS, ...limits } }
  return done(await exchangeView(given))
}

type Shown = {
  readonly best: readonly { readonly mark: string; readonly option: unknown; readonly predicted: unknown }[]
  readonly dearer: number
  readonly looked: unknown
  /** Of the tubes of the set and of the one looked at. */
  readonly predicted: readonly unknown[]
}

async function asShown(view: ExchangeView): Promise<Shown> {
  const compared = await comparedSets(view)
  const { best, dearer } = await offersOf(view, compared)
  return {
    best: best.map(({ tube: { mark }, option, predicted }) => ({ mark, option, predicted })),
    dearer,
    looked: view.into && setWith(compared, view.into.tube),
    predicted: ownTubes(view).map(({ tube }) => predictedTube(compared.limits.predictions, tube.id)),
  }
}

const ownTubes = ({ out, beside, into }: ExchangeView) => [
  out,
  ...beside.map(({ stocked }) => stocked),
  ...(into ? [into] : []),
]

async function fromScratch(view: ExchangeView): Promise<Shown> {
  const { place, line, quote, out, into } = view
  const stock = await listStockForFamily(place.demand.family)
  const named = new Set(quote.lines.flatMap(({ tubeId }) => tubeId ?? []))
  const pricedOf = (ranked: readonly Candidate[]) => {
    const free = ranked.filter(({ tubeId }) => !named.has(tubeId))
    const within = free.filter((tube) => priceWith({ line, quote, out }, tube).ok)
    return { within: within.slice(0, 5), dearer: free.length - within.length }
  }
  if (place.group === null) {
    const fit = stock.filter((each) => unfitFor(each, place, { ...view.view, ...view }).length === 0)
    const { within, dearer } = pricedOf(
      place.socket.role === 'phase-inverter'
        ? byBalance(fit.flatMap((each) => twinOf(each, view.view) ?? [])).map(({ candidate }) => candidate)
        : candidatesOf(fit, view.view).sort((a, b) => a.price - b.price || naturalOrder(a.mark, b.mark)),
    )
    const best = within.map(({ mark }) => ({ mark, option: null, predicted: null }))
    return { best, dearer, looked: null, predicted: ownTubes(view).map(() => null) }
  }
  const found = await triedOneByOne(view, stock)
  const { within, dearer } = pricedOf(found.ranked)
  const told = (tubeId: string) => predictedTube(found.limits.predictions, tubeId)
  return {
    best: within.map(({ tubeId, mark }) => ({ mark, option: found.setWith(tubeId), predicted: told(tubeId) })),
    dearer,
    looked: into && found.setWith(into.tube.id),
    predicted: ownTubes(view).map(({ tube }) => told(tube.id)),
  }
}

async function triedOneByOne(view: ExchangeView, stock: Awaited<ReturnType<typeof listStockForFamily>>) {
  const { beside, out, circuit, bench, shop, place, chosen } = view
  const everyone = [...new Map([...stock, ...ownTubes(view)].map((each) => [each.tube.id, each])).values()]
  const carrying = await findCarrying(chosen.on)
  const to = carryTarget(candidatesOf(everyone, view.view), carrying)
  const whole = to === null ? carrying : { ...carrying, to }
  const basis = circuit.ok
    ? predictionsIn(circuit.value, everyone, { bench, shop, now: view.view.now, carrying: whole })
    : circuit
  const plain: MatchLimits = { ...view.limits, carrying: whole }
  const all = {
    beside: beside.map(({ stocked }) => candidateOf(stocked, view.view)),
    out: candidateOf(out, view.view),
    stock: candidatesOf(stock, view.view),
  }
  const limits = basis.ok ? { ...plain, predictions: basis.value } : plain
  const sets = replaceOne(all, place.demand, limits)
  if (sets.ok || sets.fault.code !== 'beside-not-predicted') return { ...done(sets), limits }
  return { ...done(replaceOne(all, place.demand, plain)), limits: plain }
}

async function same(asking: Asking = {}): Promise<Shown> {
  const view = await viewed(asking)
  const shown = await asShown(view)
  expect(shown).toEqual(await fromScratch(view))
  return shown
}

const marks = async (asking: Asking = {}) => (await same(asking)).best.map(({ mark }) => mark)

let number = ''
const ids: string[] = []
const markOf = async (at: number) => (await database.tube.findUniqueOrThrow({ where: { id: ids[at] as string } })).mark

beforeAll(async () => {
  vi.useFakeTimers({ toFake: ['Date'], now: NOW })
  await openStockedShop()
  number = await jobInCircuit(4)
  for (let at = 0; at < 16; at += 1) {
    const milliamps = 64 + ((at * 7) % 16)
    ids.push(
      await tubeInStock(
        { price: money(4000 + 37 * ((at * 5) % 16)) },
        { sections: [section(milliamps, 5.6 + (at % 5) / 10)] },
      ),
    )
  }
  await tubeInStock({}, { instrumentName: 'Old tester', sections: [section(70, 6)] })
  await tubeInStock({}, null)
  await draftWith(number)
  const tubes = ids.slice(0, 4).map((tubeId, at) => ({ tubeId, socketPosition: `V${at + 1}` }))
  done(await chooseTubes(atBench(), await shopOnFile(), { jobNumber: number, group: 'output', tubes, match: null }))
})
afterAll(() => {
  vi.useRealTimers()
})
/** What was kept before each write is warm. */
beforeEach(async () => {
  await same()
  await same({ limits: { at: 'test-point' } })
})

describe('out of a set of four', () => {
  it('predicted in the amplifier and at the test point, with the tube that is looked at', async () => {
    const { best, looked, predicted } = await same({ mark: await markOf(9) })
    expect(best).toHaveLength(5)
    expect(best.every((offer) => offer.option && offer.predicted)).toBe(true)
    expect([looked, ...predicted]).not.toContain(null)
    const atPoint = await same({ mark: await markOf(9), limits: { at: 'test-point' } })
    expect(atPoint.best.every((offer) => offer.option && !offer.predicted)).toBe(true)
  })

  it('after the first that was offered is sold, the next held elsewhere, the third tested again', async () => {
    const [first, second, third] = (await marks()) as [string, string, string]
    await database.tube.update({ where: { mark: first }, data: { whereabouts: 'sold' } })
    expect(await marks()).not.toContain(first)
    const held = await database.tube.findUniqueOrThrow({ where: { mark: second } })
    const until = new Date(NOW.getTime() + 60_000)
    await inTransaction((tx) =>
      setHold(tx, [held.id], { hold: 'held', jobId: 'another', quoteId: 'q', until, now: NOW }),
    )
    expect(await marks()).not.toContain(second)
    expect((await same({ mark: second })).looked).toBeNull()
    const { id: tubeId } = await database.tube.findUniqueOrThrow({ where: { mark: third } })
    done(await addTubeTest(atBench(), { tubeId, reject: false, test: testEntry({ sections: [section(40, 3)] }) }))
    expect(await marks()).not.toContain(third)
    await same({ limits: { at: 'test-point' } })
    vi.setSystemTime(until.getTime() + 1)
    expect(await marks()).toContain(second)
    vi.setSystemTime(NOW)
  })

  it('within another limit: tests of the last ten days alone', async () => {
    const recent = ids[12] as string
    await database.tubeTest.updateMany({
      where: { tubeId: { not: recent } },
      data: { testedAt: new Date('2031-03-01T15:00:00Z') },
    })
    expect(await marks({ limits: { age: 10 } })).toEqual([await markOf(12)])
    expect((await marks()).length).toBe(5)
  })

  it('one goes that was sold, one stays that is fitted already: neither lies in a drawer, and the set is told as before', async () => {
    await database.tube.update({ where: { id: ids[0] as string }, data: { whereabouts: 'sold' } })
    await same({ mark: await markOf(9) })
    const atPoint = await same({ mark: await markOf(9), limits: { at: 'test-point' } })
    expect(atPoint.looked).not.toBeNull()
    await database.tube.update({ where: { id: ids[2] as string }, data: { whereabouts: 'fitted' } })
    const { best } = await same({ mark: await markOf(9) })
    expect(best.length).toBeGreaterThan(0)
    await same({ limits: { at: 'test-point' } })
  })

  it('on a quote that is out: what costs more than was agreed is counted and not offered', async () => {
    const quote = await findLatestQuote((await jobOf(number)).id)
    await database.quote.update({ where: { id: quote?.id ?? '' }, data: { state: 'sent' } })
    const agreed = quote?.lines.find(({ socketPosition }) => socketPosition === 'V2')?.unitPrice ?? 0
    await database.quoteLine.updateMany({
      where: { quoteId: quote?.id ?? '', socketPosition: 'V2' },
      data: { unitPrice: 4300 },
    })
    const { best, dearer } = await same({ position: 'V2' })
    expect(agreed).toBeGreaterThan(0)
    expect([best.length > 0, dearer > 0]).toEqual([true, true])
  })
})

describe('out of a socket that stands alone', () => {
  it('a phase inverter: balanced sections first; a rectifier: the cheapest; and after a sale', async () => {
    const twin = (a: number, b: number) =>
      tubeInStock(
        { designation: '12AX7' },
        { screenVoltage: null, gridVoltage: volts(-2), sections: [section(a, 1.6), section(b, 1.6, 2)] },
      )
    const twins = [await twin(1.2, 1.3), await twin(1.2, 1.21), await twin(1.1, 1.3), await twin(1.2, 1.2)]
    const rectifier = (price: number) =>
      tubeInStock(
        { designation: '5U4G', price: money(price) },
        { screenVoltage: null, gridVoltage: null, sections: [section(200)] },
      )
    const rectifiers = [await rectifier(3000), await rectifier(2000), await rectifier(1000)]
    await database.quote.updateMany({ data: { state: 'draft' } })
    const lines = [
      { tubeId: twins[0] as string, socketPosition: 'V8' },
      { tubeId: rectifiers[0] as string, socketPosition: 'V9' },
    ]
    for (const line of lines) {
      const choice = { jobNumber: number, group: '', tubes: [line], match: null }
      done(await chooseTubes(atBench(), await shopOnFile(), choice))
    }
    const named = async (position: string) => {
      const found = await database.tube.findMany({ where: { mark: { in: await marks({ position }) } } })
      return found.map(({ id }) => id).toSorted()
    }
    expect(await named('V8')).toEqual([twins[1], twins[2], twins[3]].toSorted())
    expect(await named('V9')).toEqual([rectifiers[1], rectifiers[2]].toSorted())
    await database.tube.update({ where: { id: twins[3] as string }, data: { whereabouts: 'sold' } })
    expect(await named('V8')).toEqual([twins[1], twins[2]].toSorted())
    await same({ position: 'V8', limits: { age: 5 } })
  })
})
