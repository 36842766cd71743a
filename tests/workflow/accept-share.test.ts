import { beforeAll, describe, expect, it } from 'vitest'
import { money } from '@/lib/domain/money'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import { listJobHistory } from '@/lib/store/history'
import { findDraftTubes, findLatestQuote } from '@/lib/store/quote'
import { listReadingSets } from '@/lib/store/reading-set'
import { listTubesById } from '@/lib/store/tube'
import { acceptShare, readAs, type SharedTube } from '@/lib/workflow/accept-share'
import { addTubeTest } from '@/lib/workflow/add-tube-test'
import { stepFaultText } from '@/lib/workflow/step-fault-text'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, NOW } from '@/tests/support/person-at-work'
import { choose, done, draftWith, jobOf, jobOnBench, send, shopOnFile } from '@/tests/support/quoted-job'
import { openStockedShop, section, testEntry, tubeInStock } from '@/tests/support/stocked-shop'
import { read } from '@/tests/support/tested-job'

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
  const [latest] = await listReadingSets((await jobOf(jobNumber)).id)
  return { ids, tubes, shared: { jobNumber, readAs: readAs(latest), sets: [{ group: 'output', tubes, match: null }] } }
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
