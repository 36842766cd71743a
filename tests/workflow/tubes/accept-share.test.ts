import { beforeAll, describe, expect, it } from 'vitest'
import type { Socket } from '@/lib/domain/amp/socket'
import { SOCKET_BOUNDS } from '@/lib/domain/amp/socket-bounds'
import { NO_SUPPLY_FACTS, type SupplyFacts } from '@/lib/domain/amp/supply-facts'
import { money } from '@/lib/domain/money'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import { basisChanges } from '@/lib/domain/stock/plan-basis'
import { findAmp, findAmpSheet } from '@/lib/store/amp'
import { listJobHistory } from '@/lib/store/history'
import { findDraftTubes, findLatestQuote } from '@/lib/store/quote'
import { listTubesById } from '@/lib/store/tube'
import { keepAmpSheet } from '@/lib/workflow/bench/keep-amp-sheet'
import { keepSupply } from '@/lib/workflow/bench/keep-supply'
import { keepOwnType } from '@/lib/workflow/shop/keep-own-type'
import { keepShop } from '@/lib/workflow/shop/keep-shop'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { addTubeTest } from '@/lib/workflow/stock/add-tube-test'
import { acceptShare, type SharedTube } from '@/lib/workflow/tubes/accept-share'
import { planBasis } from '@/lib/workflow/tubes/plan-basis'
import { ownEntry } from '@/tests/domain/tube/own/own-type-fixture'
import { freshDatabase } from '@/tests/support/fresh-database'
import { keeping } from '@/tests/support/keeper'
import { atBench, NOW } from '@/tests/support/person-at-work'
import { choose, done, draftWith, jobOf, jobOnBench, send, shopOnFile } from '@/tests/support/quoted-job'
import { openStockedShop, section, testEntry, tubeInStock } from '@/tests/support/stocked-shop'
import { acceptedJob, fitBoth, later, read } from '@/tests/support/tested-job'

const database = freshDatabase()
beforeAll(() => openStockedShop())

/** As a sharing would see it now. */
async function seen(tubeId: string): Promise<SharedTube> {
  const [stocked] = await listTubesById([tubeId])
  if (!stocked) throw new Error(`No tube ${tubeId}`)
  const shop = await shopOnFile()
  const view = { now: NOW, timeZone: shop.timeZone, jobInHand: null, catalogue: shop }
  const { test, mark, price } = candidateOf(stocked, view)
  if (!test) throw new Error(`${mark} has no reading`)
  return { tubeId, mark, side: null, test, price }
}

async function sharedPair(jobNumber: string) {
  const ids = [await tubeInStock(), await tubeInStock()] as const
  const tubes = [await seen(ids[0]), await seen(ids[1])] as const
  const basis = await planBasis(await jobOf(jobNumber), await shopOnFile())
  return { ids, tubes, shared: { jobNumber, basis, sets: [{ group: 'output', tubes, match: null }] } }
}

const accept = async (shared: Parameters<typeof acceptShare>[2]) => acceptShare(atBench(), await shopOnFile(), shared)

async function refusal(shared: Parameters<typeof acceptShare>[2]): Promise<string> {
  const answer = await accept(shared)
  if (answer.ok) throw new Error('It was taken')
  return stepFaultText(answer.fault, await shopOnFile())
}

const draftOf = async (jobNumber: string) => findDraftTubes((await jobOf(jobNumber)).id)

describe('accepting what a sharing gave a job', () => {
  it('puts the pair in V3 and V4 of a draft begun for it, and the history tells it', async () => {
    const job = await jobOnBench()
    const { ids, shared } = await sharedPair(job)
    done(await accept(shared))
    expect((await draftOf(job)).map(({ tubeId, socketPosition }) => [socketPosition, tubeId])).toEqual([
      ['V3', ids[0]],
      ['V4', ids[1]],
    ])
    const { id } = await jobOf(job)
    const [a, b] = shared.sets[0]?.tubes ?? []
    expect((await listJobHistory(id)).map(({ did }) => did)).toContain(
      `Tubes chosen for output: ${a?.mark} in V3, ${b?.mark} in V4`,
    )
  })

  it('names everything that changed, and writes nothing: one tested again, one held, the amplifier read', async () => {
    const job = await jobOnBench()
    const { ids, shared } = await sharedPair(job)
    const entry = testEntry({ sections: [section(66, 5.2)] })
    done(await addTubeTest(atBench(), { tubeId: ids[0], test: entry, reject: false }))
    const other = await jobOnBench()
    await draftWith(other, [ids[1], await tubeInStock()])
    done(await send(other))
    done(await read(job))
    const [a, b] = shared.sets[0]?.tubes ?? []
    expect(await refusal(shared)).toBe(
      `Nothing was written down. Since this was worked out: the amplifier was read again, so what its sockets ask for may have changed; ${a?.mark} was tested again: 72 mA and 6 mA/V on May 6, 2031, then 66 mA and 5.2 mA/V on May 6, 2031; ${b?.mark} is held for job ${other} now. Work it out again.`,
    )
    expect(await findLatestQuote((await jobOf(job)).id)).toBeNull()
  })

  it('is refused when a tube was sold, repriced, rejected, or stands on another job’s draft', async () => {
    const job = await jobOnBench()
    const { ids, shared, tubes: first } = await sharedPair(job)
    const more = await sharedPair(job)
    const tubes = [...first, ...more.tubes]
    await database.tube.update({ where: { id: ids[0] }, data: { whereabouts: 'sold' } })
    await database.tube.update({ where: { id: ids[1] }, data: { price: money(4600) } })
    await database.tube.update({ where: { id: more.ids[0] }, data: { condition: 'reject' } })
    const other = await jobOnBench()
    await draftWith(other)
    done(await choose(other, [more.ids[1]]))
    const answer = await accept({ ...shared, sets: [{ group: 'output', tubes, match: null }] })
    expect(answer).toMatchObject({
      ok: false,
      fault: {
        code: 'plan-stale',
        changes: [
          { what: 'sockets', group: 'output' },
          { what: 'gone', whereabouts: 'sold' },
          { what: 'price' },
          { what: 'rejected' },
          { what: 'on-draft', jobNumber: other },
        ],
      },
    })
  })

  it('is all or none: the second set cannot stand, so the first is not written either', async () => {
    const job = await jobOnBench()
    const { shared } = await sharedPair(job)
    const twice = { ...shared, sets: [...shared.sets, ...shared.sets] }
    done(await accept(shared))
    const before = await draftOf(job)
    const { shared: next, tubes: nextTubes } = await sharedPair(job)
    // The same tube for both sockets of the second set: found out only when it is being written.
    const [one] = nextTubes
    const broken = { ...next, sets: [...next.sets, { group: 'output', tubes: [one, one], match: null }] }
    expect(await accept(broken)).toMatchObject({ ok: false, fault: { code: 'tube-twice' } })
    expect(await draftOf(job)).toEqual(before)
    // Taken again it is the same draft, no second one.
    done(await accept(twice))
    expect(await database.quote.count({ where: { jobId: (await jobOf(job)).id } })).toBe(1)
  })

  it('a quote that is out, and a closed job, are left alone', async () => {
    const job = await jobOnBench()
    const { ids, shared } = await sharedPair(job)
    await draftWith(job, ids)
    done(await send(job))
    expect(await accept(shared)).toMatchObject({ ok: false, fault: { code: 'quote-not-draft' } })
    const closed = await jobOnBench()
    const { shared: late } = await sharedPair(closed)
    await database.job.update({ where: { number: closed }, data: { state: 'collected' } })
    expect(await accept(late)).toMatchObject({ ok: false, fault: { code: 'job-closed' } })
  })

  it('one that two people accept for two jobs at once goes to one of them', async () => {
    const [a, b] = [await jobOnBench(), await jobOnBench()]
    const { shared } = await sharedPair(a)
    const both = await Promise.all([accept(shared), accept({ ...shared, jobNumber: b })])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect([...(await draftOf(a)), ...(await draftOf(b))]).toHaveLength(2)
  })
})

describe('what a sharing rests on beside the tubes', () => {
  const since = (what: string) => `Nothing was written down. Since this was worked out: ${what}. Work it out again.`

  async function saveSheet(number: string, change: (socket: Socket) => Partial<Socket>): Promise<void> {
    const { ampId } = await jobOf(number)
    const sheet = await findAmpSheet(ampId)
    if (!sheet) throw new Error('no sheet')
    const sockets = sheet.sockets.map((socket) => ({ ...socket, ...change(socket) }))
    const { version, outputClass } = sheet.amp
    done(await keepAmpSheet(atBench(), { ampId, version, outputClass, sockets }))
  }

  async function saveSupply(number: string, facts: Partial<SupplyFacts>): Promise<void> {
    const { ampId } = await jobOf(number)
    const { version } = (await findAmp(ampId)) ?? { version: 0 }
    done(await keepSupply(atBench(), { ampId, version, facts: { ...NO_SUPPLY_FACTS, ...facts } }))
  }

  it('supply facts written down in between are told with both values, and nothing is written', async () => {
    const job = await jobOnBench()
    await saveSupply(job, { sourceOhms: 200 })
    const { shared } = await sharedPair(job)
    await saveSupply(job, { sourceOhms: 150, openSupplyVolts: 388 })
    expect(await refusal(shared)).toBe(
      since(
        'what is known of its supplies was changed (Supply with nothing drawn: 388 V; Source resistance: 200 Ω → 150 Ω)',
      ),
    )
    expect(await findLatestQuote((await jobOf(job)).id)).toBeNull()
    await saveSupply(job, { sourceOhms: 200 })
    done(await accept(shared))
  })

  it('a cathode resistor changed on the sheet is told; where a socket is drawn decides nothing', async () => {
    const job = await jobOnBench()
    const { shared } = await sharedPair(job)
    await saveSheet(job, ({ role }) => (role === 'output' ? { cathodeOhms: 270 } : {}))
    const { label } = SOCKET_BOUNDS.cathodeOhms
    expect(await refusal(shared)).toBe(
      since(`the sheet of the amplifier was changed (V3 ${label}: 250 Ω → 270 Ω; V4 ${label}: 250 Ω → 270 Ω)`),
    )
    await saveSheet(job, ({ role, place }) => ({
      across: 10 * place,
      depth: 20,
      ...(role === 'output' ? { cathodeOhms: 250 } : {}),
    }))
    done(await accept(shared))
  })

  it('another mains marking, another type in a socket: both are told at once', async () => {
    const job = await jobOnBench()
    const { shared } = await sharedPair(job)
    await saveSheet(job, ({ position }) => (position === 'V3' ? { typeFitted: '6L6GC' } : {}))
    const { ampId } = await jobOf(job)
    await database.amp.update({ where: { id: ampId }, data: { mainsVolts: 240 } })
    expect(await refusal(shared)).toBe(
      since('the sheet of the amplifier was changed (Marked mains: 230 V → 240 V; V3 type: 6V6GT → 6L6GC)'),
    )
  })

  it('the meter of the round, the shop’s windows and its own types count as well', async () => {
    const job = await jobOnBench()
    done(await read(job, { phase: 'before' }))
    const { shared } = await sharedPair(job)
    await database.instrument.updateMany({ where: { name: 'Meter 1' }, data: { accuracyPercent: 2 } })
    const { version, demo: _demo, ownTypes: _types, ...settings } = await shopOnFile()
    const next = { ...settings, idleCathode: { low: 70, high: 90 } }
    done(await keepShop(keeping(), { version, settings: next }))
    done(await keepOwnType(atBench(), { id: null, version: 0, entry: ownEntry({}), active: true }))
    expect(await refusal(shared)).toBe(
      since(
        'the figures of the meter it was read with were changed; the idle windows of the shop were changed; a tube type of the shop was changed',
      ),
    )
  })

  it('a later test of a tube that sat in the amplifier when it was read counts, as its circuit was made with it', async () => {
    const { number, tubeIds } = await acceptedJob()
    await fitBoth(number)
    done(await read(number, { step: later(30) }))
    const before = await planBasis(await jobOf(number), await shopOnFile())
    done(
      await addTubeTest(later(31), {
        tubeId: tubeIds[0],
        test: testEntry({ sections: [section(60, 5)] }),
        reject: false,
      }),
    )
    expect(basisChanges(before, await planBasis(await jobOf(number), await shopOnFile()))).toEqual([
      { what: 'fitted-tests' },
    ])
  })
})
