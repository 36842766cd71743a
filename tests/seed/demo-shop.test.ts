import { rmSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { layoutChassis } from '@/lib/domain/amp/chassis-layout'
import { sheetAsOf } from '@/lib/domain/amp/fitting'
import { socketBaseOf } from '@/lib/domain/amp/socket-base'
import { outputGroups } from '@/lib/domain/bench/bench-result'
import { dayInZone } from '@/lib/domain/calendar'
import { ampCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { JOB_STATES } from '@/lib/domain/job/job-state'
import { checkPassPhrase } from '@/lib/domain/person/password'
import { clockInZone } from '@/lib/domain/quote/answer'
import { stateNow } from '@/lib/domain/quote/quote'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { findSupply } from '@/lib/store/amp-supply'
import { closeDatabase, db } from '@/lib/store/database'
import { findQuote } from '@/lib/store/quote'
import { findShop } from '@/lib/store/shop'
import { signIn } from '@/lib/workflow/shop/sign-in'
import { ampState } from '@/lib/workflow/work/safety-state'
import { DEMO_MODELS } from '@/seed/amps/models'
import { seedDemoShop } from '@/seed/demo-shop'
import { BOOK_VALUES, type BookKey } from '@/seed/stock/book-values'
import { demoSignIns } from '../support/demo-sign-in'
import { copyOfTemplate, freshDatabase } from '../support/fresh-database'
import { contentOfShop, datesOfRecords, type IdleAt, idlesOf, type SeededRound, seededRounds } from './seeded-shop'

freshDatabase()

/** A Sunday evening in the demo’s town, on the day it sets its clocks forward; and the same morning. */
const NOW = new Date('2031-03-10T01:00:00Z')
const THAT_MORNING = new Date('2031-03-09T13:00:00Z')
const ZONE = 'America/Chicago'

let signInText = ''
let rounds: readonly SeededRound[] = []
let idles: readonly IdleAt[] = []

beforeAll(async () => {
  const seeded = await seedDemoShop(NOW)
  if (!seeded.ok) throw new Error('The database of this test was not empty')
  signInText = seeded.value
  rounds = await seededRounds()
  idles = idlesOf(rounds)
}, 240_000)

describe('the demo shop', () => {
  it('has 13 customers, 20 amplifiers of 6 models, 30 jobs, some 150 tubes of 16 types, one of them its own', async () => {
    expect(await db().customer.count()).toBe(13)
    expect(await db().amp.count()).toBe(20)
    expect((await db().amp.groupBy({ by: ['make', 'model'] })).length).toBe(6)
    expect(await db().job.count()).toBe(30)
    const tubes = await db().tube.count()
    expect(tubes).toBeGreaterThanOrEqual(145)
    expect(tubes).toBeLessThanOrEqual(160)
    expect((await db().tube.groupBy({ by: ['designation'] })).length).toBe(16)
    expect((await findShop())?.ownTypes.map(({ variants }) => variants[0]?.designations)).toEqual([
      ['6L6-QH25', 'QH25'],
    ])
    expect((await findShop())?.demo).toBe(true)
  })

  it('has jobs in every state', async () => {
    const states = await db().job.groupBy({ by: ['state'] })
    expect(states.map(({ state }) => state).toSorted()).toEqual([...JOB_STATES].toSorted())
  })

  it('has promises that are late, due today and to come', async () => {
    const today = dayInZone(NOW, ZONE)
    const open = await db().job.findMany({
      where: { state: { notIn: ['collected', 'returned-unrepaired', 'uncollected'] } },
      select: { promisedOn: true },
    })
    const days = open.map(({ promisedOn }) => promisedOn ?? '')
    expect(days.some((day) => day < today)).toBe(true)
    expect(days).toContain(today)
    expect(days.some((day) => day > today)).toBe(true)
  })

  it('is refused where there is a shop already, and changes nothing there', async () => {
    const before = await db().historyEntry.count()
    expect(await seedDemoShop(NOW)).toEqual({ ok: false, fault: 'already-open' })
    expect(await db().historyEntry.count()).toBe(before)
  })

  it('lets in everybody its text names: a counter, and a technician who keeps the shop', async () => {
    const people = demoSignIns(signInText)
    expect(people.map(({ role }) => role).toSorted()).toEqual(['counter', 'technician', 'technician'])
    for (const person of people) {
      expect(checkPassPhrase(person.passPhrase).ok).toBe(true)
      expect((await signIn(person, NOW)).ok).toBe(true)
    }
    const keepers = await db().person.findMany({ where: { keepsShop: true }, select: { role: true } })
    expect(keepers).toEqual([{ role: 'technician' }])
  })
})

describe('its chance', () => {
  it('makes the same shop in the morning and in the evening of a day', { timeout: 240_000 }, async () => {
    const evening = await contentOfShop()
    expect(evening.length).toBeGreaterThan(100_000)
    const own = process.env.BENCHGLOW_DATA
    const { folder } = copyOfTemplate()
    try {
      await closeDatabase()
      process.env.BENCHGLOW_DATA = folder
      expect((await seedDemoShop(THAT_MORNING)).ok).toBe(true)
      expect(await contentOfShop()).toBe(evening)
    } finally {
      await closeDatabase()
      process.env.BENCHGLOW_DATA = own
      rmSync(folder, { recursive: true, force: true })
    }
  })
})

describe('its readings', () => {
  it('all compute: no gap and no contradiction in any round', () => {
    expect(rounds.length).toBeGreaterThan(35)
    for (const { result, job } of rounds) {
      for (const { socket, outcome } of result.sockets) {
        expect([outcome.kind, socket.role === 'output'], `${job.number} ${socket.position}`).toEqual(
          socket.role === 'output' ? ['idle', true] : ['noted', false],
        )
      }
    }
  })

  const where = (is: (at: IdleAt) => boolean) =>
    idles.filter(is).map(({ round, position }) => `${round.model} ${position} ${round.set.phase}`)
  const cautioned = (kind: string) => where(({ idle }) => idle.cautions.some((caution) => caution.kind === kind))

  it('lie between 30 and 130 % of the plate rating, but for one dead socket', () => {
    expect(cautioned('dead-socket')).toEqual(['Millstone 100 V6 before'])
    for (const { idle, position, round } of idles) {
      if (idle.cautions.some(({ kind }) => kind === 'dead-socket')) continue
      expect(idle.platePercent?.value, `${round.job.number} ${position}`).toBeGreaterThan(30)
      expect(idle.platePercent?.value, `${round.job.number} ${position}`).toBeLessThan(130)
    }
  })

  it('show the faults they were made for: a positive grid, a high wall, 12 % too hot', () => {
    expect(cautioned('grid-positive')).toEqual(['Pipit 5 V2 before'])
    expect(cautioned('wall-high')).toEqual(['Pipit 5 V2 before'])
    const hot = idles.find(({ round }) => round.model === 'Foreman 40')
    expect(hot?.idle.verdict.verdict).toBe('over')
    expect(hot?.idle.verdict.percentOff).toBeGreaterThan(11.5)
    expect(hot?.idle.verdict.percentOff).toBeLessThan(12.5)
  })

  it('hold one pair on cathode resistors at 95 %, within, and one pair at 69 %, uncertain', () => {
    const near = (low: number, high: number) => (at: IdleAt) => {
      const percent = at.idle.platePercent?.value ?? 0
      return percent > low && percent < high
    }
    const onBench = idles.filter(({ round }) => round.job.state === 'on-bench')
    const tansy = onBench.filter((at) => at.round.model === 'Tansy 18' && near(94.5, 95.5)(at))
    expect(tansy.map(({ idle }) => idle.verdict.verdict)).toEqual(['within'])
    const foreman = onBench.filter((at) => at.round.model === 'Foreman 40' && near(68, 70)(at))
    expect(foreman.map(({ idle }) => idle.verdict.verdict)).toEqual(['uncertain'])
  })

  it('after the work are never over, under, or above the rating', () => {
    const after = idles.filter(({ round }) => round.set.phase === 'after')
    expect(after.length).toBeGreaterThan(25)
    for (const { idle, round, position } of after) {
      expect(['within', 'uncertain'], `${round.job.number} ${position}`).toContain(idle.verdict.verdict)
      expect(idle.verdict.overRating).toBe('no')
    }
  })
})

describe('its dates', () => {
  it('all lie before now, and what people did in the hours of a shop, never on a Sunday', async () => {
    const dates = await datesOfRecords()
    expect(dates.length).toBeGreaterThan(1500)
    for (const { where, at } of dates) {
      expect(at.getTime(), where).toBeLessThan(NOW.getTime())
      const clock = clockInZone(at, ZONE)
      expect(clock >= '09:30' && clock <= '17:00', `${where} at ${clock}`).toBe(true)
      expect(new Intl.DateTimeFormat('en', { timeZone: ZONE, weekday: 'short' }).format(at), where).not.toBe('Sun')
    }
  })

  it('never put a calibration after the test that names it', async () => {
    const tests = await db().tubeTest.findMany({ select: { testedAt: true, calibratedOn: true } })
    for (const { testedAt, calibratedOn } of tests) {
      expect(calibratedOn).not.toBeNull()
      expect((calibratedOn ?? '') <= dayInZone(testedAt, ZONE)).toBe(true)
    }
  })
})

describe('its stock', () => {
  it('has no tube in two sets, and none held that is not in stock', async () => {
    const sitting = await db().fitting.groupBy({
      by: ['tubeId'],
      where: { tubeId: { not: null }, removedAt: null },
      _count: true,
    })
    expect(sitting.length).toBeGreaterThan(20)
    expect(sitting.filter(({ _count }) => _count > 1)).toEqual([])
    expect(await db().tube.count({ where: { hold: { not: '' }, whereabouts: { not: 'in-stock' } } })).toBe(0)
    const quotes = await db().quote.findMany({ select: { id: true } })
    const taken: string[] = []
    for (const { id } of quotes) {
      const quote = await findQuote(id)
      if (!quote || !['draft', 'sent', 'accepted'].includes(stateNow(quote, NOW, ZONE))) continue
      taken.push(...quote.lines.flatMap(({ tubeId }) => tubeId ?? []))
    }
    expect(new Set(taken).size).toBe(taken.length)
  })

  it('claims matches only within the yardsticks', async () => {
    const quotes = await Promise.all(
      (await db().quote.findMany({ select: { id: true } })).map(({ id }) => findQuote(id)),
    )
    const matches = quotes.flatMap((quote) => quote?.matches ?? [])
    expect(matches.length).toBeGreaterThan(10)
    for (const { statement, marks } of matches) expect(statement.match, marks.join(', ')).toBe('both')
  })

  it('reads between 60 and 130 % of the book at its test point', async () => {
    const tests = await db().tubeTest.findMany({ include: { tube: { select: { designation: true, mark: true } } } })
    for (const { tube, plateVolts, plateAmps, shorts } of tests) {
      const at400 = `${tube.designation} at 400 V`
      const key = (plateVolts === 400 && at400 in BOOK_VALUES ? at400 : tube.designation) as BookKey
      if (shorts) continue
      const share = ((plateAmps ?? 0) * 1000) / BOOK_VALUES[key].plateMilliamps
      expect(share, tube.mark).toBeGreaterThan(0.6)
      expect(share, tube.mark).toBeLessThan(1.3)
    }
  })

  it('costs less than it is sold for, and old stock in its box more than any other of its type', async () => {
    const tubes = await db().tube.findMany({ select: { designation: true, condition: true, cost: true, price: true } })
    for (const { cost, price } of tubes) expect(cost ?? 0).toBeLessThan(price)
    for (const boxed of tubes.filter(({ condition }) => condition === 'new-old-stock-boxed')) {
      const others = tubes.filter(
        (other) => other.designation === boxed.designation && other.condition !== boxed.condition,
      )
      for (const other of others) expect(other.price, boxed.designation).toBeLessThan(boxed.price)
    }
  })

  it('has some untested, one with a short, some tested over a year ago, by two testers', async () => {
    expect(await db().tube.count({ where: { tests: { none: {} } } })).toBeGreaterThan(8)
    expect(await db().tubeTest.count({ where: { shorts: true } })).toBe(1)
    expect(
      await db().tubeTest.count({ where: { testedAt: { lt: new Date(NOW.getTime() - 366 * 86_400_000) } } }),
    ).toBeGreaterThan(8)
    expect((await db().tubeTest.groupBy({ by: ['instrumentName'] })).length).toBe(2)
  })
})

describe('its papers and mails', () => {
  it('leave every amplifier that went home with a receipt and a pickup sheet, and what was sold with a quote and a work order', async () => {
    const gone = await db().job.findMany({
      where: { state: { in: ['collected', 'returned-unrepaired'] } },
      select: { number: true, papers: { select: { kind: true } }, quotes: { select: { state: true } } },
    })
    expect(gone.length).toBe(13)
    for (const { number, papers, quotes } of gone) {
      const kinds = papers.map(({ kind }) => kind)
      expect(kinds, number).toEqual(expect.arrayContaining(['receipt', 'pickup-sheet']))
      const sold = quotes.some(({ state }) => state === 'accepted')
      if (sold) expect(kinds, number).toEqual(expect.arrayContaining(['quote', 'work-order']))
    }
  })

  it('leave no mail that would go out when a server is set up, and one that was refused', async () => {
    const states = await db().mail.groupBy({ by: ['state'], _count: true, orderBy: { state: 'asc' } })
    expect(states.map(({ state, _count }) => (state === 'failed' ? [state, _count] : [state]))).toEqual([
      ['failed', 1],
      ['sent'],
    ])
  })

  it('are addressed only to reserved domains and numbers', async () => {
    const people = [...(await db().customer.findMany()), ...(await db().shop.findMany())]
    for (const { email, phone } of people) {
      expect(phone).toMatch(/^555-01\d\d$/)
      expect(email).toMatch(/^$|@([\w-]+\.)*example(\.(com|net|org))?$/)
    }
  })
})

describe('its chassis', () => {
  it('have every socket where its sheet puts it', () => {
    for (const { model, sockets } of Object.values(DEMO_MODELS)) {
      const specs = sockets.map(({ position, role, typeFitted, across, depth }) => ({
        id: position,
        position,
        role,
        base: socketBaseOf(typeFitted, HANDBOOK_ONLY),
        across,
        depth,
      }))
      const { places } = layoutChassis(specs)
      expect(
        places.map(({ source }) => source),
        model,
      ).toEqual(specs.map(() => 'given'))
    }
  })
})

describe('the supplies of its amplifiers', () => {
  it('are noted of four models of six, and no circuit of a round contradicts them', async () => {
    const shop = await findShop()
    if (!shop) throw new Error('no shop')
    const noted = new Set<string>()
    const faults: string[] = []
    const contradictions: string[] = []
    let circuits = 0
    for (const { job, set, model } of rounds) {
      const state = await ampState(job)
      const sheet = sheetAsOf(state.sheet, state.fittings, set.takenAt)
      const facts = await findSupply(sheet.amp.id)
      if (facts.gridLeakOhms !== null) noted.add(model)
      for (const group of outputGroups(sheet)) {
        const circuit = ampCircuit({ sheet, group, facts, set, shop, records: {} })
        if (!circuit.ok) faults.push(`${model}: ${circuit.fault.code}`)
        else circuits += 1
        const said = circuit.ok ? circuit.value.assumptions.map(({ code }) => code) : []
        contradictions.push(...said.filter((code) => code.endsWith('contradict')))
      }
    }
    expect([...noted].toSorted()).toEqual(['Drover 15', 'Foreman 40', 'Millstone 100', 'Type 240'])
    expect(contradictions).toEqual([])
    // No circuit is made of the two faults of the demo that no tube explains: a positive grid, and a dead socket.
    expect(faults).toEqual(['Pipit 5: socket-unlike-type', 'Millstone 100: socket-dead'])
    expect(circuits).toBeGreaterThan(30)
  })
})
