import { describe, expect, it, test } from 'vitest'
import { findExactly, jobNumberRemark } from '@/app/find/find-exactly'
import { db } from '@/lib/store/database'
import { listJobsMatching } from '@/lib/store/find'
import { ampOnFile, ownerOnFile } from '@/tests/support/amps'
import { freshDatabase } from '@/tests/support/fresh-database'
import { NOW } from '@/tests/support/person-at-work'
import { openStockedShop, tubeInStock } from '@/tests/support/stocked-shop'

freshDatabase()
await openStockedShop()

const customerId = await ownerOnFile('Mirela Thörn')
const ampId = await ampOnFile({ make: 'Corvane', model: 'Tilt 20', serial: 'AX-0417' }, customerId)
const plain = {
  customerId,
  ampId,
  state: 'received',
  fault: 'hum',
  takenInById: 'o',
  takenInBy: 'Odo',
  stateSince: NOW,
}
// 1047-0 and 1055-3 by the Luhn formula, worked by hand.
await db().job.create({ data: { ...plain, number: '1047-0', receivedAt: NOW } })
const { id: secondJob } = await db().job.create({
  data: { ...plain, number: '1055-3', receivedAt: new Date(NOW.getTime() + 1) },
})
const quote = {
  jobId: secondJob,
  number: 'Q2001',
  revision: 1,
  state: 'sent',
  validUntil: '2031-06-01',
  depositPercent: 0,
}
await db().quote.create({ data: { ...quote, taxName: 'Tax', taxMilliPercent: 0 } })
const tubeId = await tubeInStock({ mark: 'T-0147' })

describe('one thing alone', () => {
  test.each([
    ['1047-0', '/jobs/1047-0'],
    ['10470', '/jobs/1047-0'],
    [' 1047 0 ', '/jobs/1047-0'],
    ['t-0147', `/stock/${tubeId}`],
    ['T 0147', `/stock/${tubeId}`],
    ['1048-8', null],
    ['1047', null],
    ['thorn', null],
    ['', null],
  ])('“%s” leads to %s', async (typed, path) => expect(await findExactly(typed)).toBe(path))
})

test.each([
  ['1047-4', 'cannot be a job number'],
  ['1047 4', 'cannot be a job number'],
  ['1048-8', 'There is no job 1048-8.'],
  ['10474', null],
  ['T-0147', null],
  ['thorn', null],
])('a remark on “%s”: %s', (typed, part) => {
  if (part === null) expect(jobNumberRemark(typed)).toBeNull()
  else expect(jobNumberRemark(typed)).toContain(part)
})

describe('jobs', () => {
  test.each([
    ['10', ['1055-3', '1047-0']],
    ['1047', ['1047-0']],
    ['thorn', ['1055-3', '1047-0']],
    ['corvane THÖRN', ['1055-3', '1047-0']],
    ['ax0417', ['1055-3', '1047-0']],
    ['q2001', ['1055-3']],
    ['thorn nobody', []],
    ['', []],
    ['   ', []],
  ])('by “%s”: %j, newest first', async (typed, numbers) =>
    expect((await listJobsMatching(typed)).map(({ number }) => number)).toEqual(numbers),
  )

  it('come with whose and what they are', async () => {
    expect(await listJobsMatching('1047')).toMatchObject([
      { customerName: 'Mirela Thörn', ampName: 'Corvane Tilt 20', serial: 'AX-0417' },
    ])
  })
})
