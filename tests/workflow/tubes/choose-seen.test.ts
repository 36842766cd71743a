/** A set chosen from a page: what changed since the page showed it is told, and nothing is written. */
import { beforeAll, describe, expect, it } from 'vitest'
import type { TestedCandidate } from '@/lib/domain/matching/proposal'
import { money } from '@/lib/domain/money'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import { findDraftTubes, findLatestQuote } from '@/lib/store/quote'
import { listTubesById } from '@/lib/store/tube'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { addTubeTest } from '@/lib/workflow/stock/add-tube-test'
import { chooseTubes } from '@/lib/workflow/tubes/choose-tubes'
import { planBasis } from '@/lib/workflow/tubes/plan-basis'
import { choiceChanges, type SeenChoice, seenTube } from '@/lib/workflow/tubes/seen-choice'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, NOW } from '@/tests/support/person-at-work'
import { done, draftWith, jobOf, jobOnBench, send, shopOnFile } from '@/tests/support/quoted-job'
import { openStockedShop, section, testEntry, tubeInStock } from '@/tests/support/stocked-shop'
import { read } from '@/tests/support/tested-job'

const database = freshDatabase()
beforeAll(() => openStockedShop())

async function shownSet(job: string) {
  const ids = [await tubeInStock(), await tubeInStock()] as const
  const shop = await shopOnFile()
  const basis = await planBasis(await jobOf(job), shop)
  const view = { now: NOW, timeZone: shop.timeZone, jobInHand: null, catalogue: shop }
  const stocked = await listTubesById(ids)
  // Through a form and back.
  const seen = JSON.parse(
    JSON.stringify({ basis, tubes: stocked.map((each) => seenTube(candidateOf(each, view) as TestedCandidate)) }),
  ) as SeenChoice
  const markOf = (at: 0 | 1) => stocked.find(({ tube }) => tube.id === ids[at])?.tube.mark ?? expect.fail('no tube')
  return { ids, seen, marks: [markOf(0), markOf(1)] as const }
}

const press = async (job: string, ids: readonly [string, string], seen: SeenChoice) => {
  const tubes = ids.map((tubeId, at) => ({ tubeId, socketPosition: ['V3', 'V4'][at] ?? '' }))
  return chooseTubes(atBench(), await shopOnFile(), { jobNumber: job, group: 'output', tubes, match: null }, seen)
}

describe('a set chosen as a page showed it', () => {
  it('is taken while nothing it rests on changed', async () => {
    const job = await jobOnBench()
    done(await read(job))
    const { ids, seen } = await shownSet(job)
    done(await press(job, ids, seen))
    const drafted = await findDraftTubes((await jobOf(job)).id)
    expect(drafted.map(({ tubeId }) => tubeId)).toEqual(ids)
  })

  it('is refused with all that changed: one tested again, one held elsewhere, the amplifier read anew', async () => {
    const job = await jobOnBench()
    const { ids, seen, marks } = await shownSet(job)
    const entry = testEntry({ sections: [section(66, 5.2)] })
    done(await addTubeTest(atBench(), { tubeId: ids[0], test: entry, reject: false }))
    const other = await jobOnBench()
    await draftWith(other, [ids[1], await tubeInStock()])
    done(await send(other))
    done(await read(job))
    const pressed = await press(job, ids, seen)
    if (pressed.ok) expect.fail('It was taken')
    const told = stepFaultText(pressed.fault, await shopOnFile())
    expect(told).toContain('the amplifier was read again')
    expect(told).toContain(`${marks[0]} was tested again: 72 mA and 6 mA/V`)
    expect(told).toContain(`${marks[1]} is held for job ${other} now`)
    expect(await findLatestQuote((await jobOf(job)).id)).toBeNull()
    // The same is told of a set that is not among those offered any more.
    const scene = { step: atBench(), shop: await shopOnFile(), job: await jobOf(job) }
    expect(pressed.fault).toEqual({ code: 'plan-stale', changes: await choiceChanges(seen, scene) })
  })

  it('a price written meanwhile is a change, and so is a tube sold', async () => {
    const job = await jobOnBench()
    const { ids, seen } = await shownSet(job)
    await database.tube.update({ where: { id: ids[0] }, data: { price: money(4600) } })
    await database.tube.update({ where: { id: ids[1] }, data: { whereabouts: 'sold' } })
    expect(await press(job, ids, seen)).toMatchObject({
      ok: false,
      fault: { code: 'plan-stale', changes: [{ what: 'price' }, { what: 'gone', whereabouts: 'sold' }] },
    })
  })
})
