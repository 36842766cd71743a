import { beforeAll, expect, it } from 'vitest'
import { findTube, listTubes } from '@/lib/store/tube'
import { listSetMembers } from '@/lib/store/tube-set'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { keepSets } from '@/lib/workflow/stock/keep-sets'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, NOW } from '@/tests/support/person-at-work'
import { done, draftWith, jobOnBench, send, shopOnFile } from '@/tests/support/quoted-job'
import { openStockedShop, tubeInStock } from '@/tests/support/stocked-shop'

const database = freshDatabase()
beforeAll(() => openStockedShop())

async function pair() {
  const tubes = []
  for (const tubeId of [await tubeInStock(), await tubeInStock()])
    tubes.push({ tubeId, mark: (await findTube(tubeId))?.mark ?? '' })
  return tubes
}

it('two pairs are kept under two names, found by them, and told on every tube', async () => {
  const [a, b] = [await pair(), await pair()]
  const sets = [
    { name: 'Pair 6L6, one', tubes: a },
    { name: 'Pair 6L6, two', tubes: b },
  ]
  expect(done(await keepSets(atBench(), sets))).toBe(2)
  expect((await listSetMembers('Pair 6L6, one')).map(({ id }) => id).sort()).toEqual(
    a.map(({ tubeId }) => tubeId).sort(),
  )
  expect((await listTubes({ search: 'pair two', now: NOW })).tubes).toHaveLength(2)
  const told = await database.historyEntry.findMany({
    where: { subject: 'tube', did: { contains: 'Kept in the set' } },
  })
  expect(told).toHaveLength(4)
})

it('one that went to a job meanwhile keeps all of them as they were', async () => {
  const [a, b] = [await pair(), await pair()]
  const job = await jobOnBench()
  await draftWith(
    job,
    b.map(({ tubeId }) => tubeId),
  )
  done(await send(job))
  const sets = [
    { name: 'Pair 6L6, three', tubes: a },
    { name: 'Pair 6L6, four', tubes: b },
  ]
  const answer = await keepSets(atBench(), sets)
  if (answer.ok) throw new Error('It was kept')
  expect(stepFaultText(answer.fault, await shopOnFile())).toBe(
    `Nothing was written down. Since this was worked out: ${b[0]?.mark} is held for job ${job} now; ${b[1]?.mark} is held for job ${job} now. Work it out again.`,
  )
  expect(await listSetMembers('Pair 6L6, three')).toEqual([])
})
