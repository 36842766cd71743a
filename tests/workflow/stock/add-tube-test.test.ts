import { expect, it } from 'vitest'
import type { Day } from '@/lib/domain/calendar'
import { findTube, listTests } from '@/lib/store/tube'
import { addTubeTest } from '@/lib/workflow/stock/add-tube-test'
import { keepTube } from '@/lib/workflow/stock/keep-tube'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, atCounter, NOW } from '@/tests/support/person-at-work'
import { openStockedShop, section, testEntry, tubeDetails, tubeInStock } from '@/tests/support/stocked-shop'

const database = freshDatabase()
await openStockedShop()

const add = (tubeId: string, over = {}, reject = false, step = atBench()) =>
  addTubeTest(step, { tubeId, test: testEntry(over), reject })

it('both sections of a twin are one test', async () => {
  const id = await tubeInStock({ designation: '12AX7' }, null)
  await add(id, { screenVoltage: null, sections: [section(1.2, 1.6), section(1.1, 1.5, 2)] })
  const tests = await listTests(id)
  expect(tests.map(({ sections }) => sections)).toEqual([[section(1.2, 1.6), section(1.1, 1.5, 2)]])
})

it('two tests of one past day stay two, the one entered last on top', async () => {
  const id = await tubeInStock({}, null)
  const day = '2031-05-01' as Day
  await add(id, { day, sections: [section(70, 6)] })
  await add(id, { day, sections: [section(71, 6)] })
  await add(id, { day, sections: [section(72, 6)] })
  expect((await listTests(id)).map(({ sections }) => sections[0]?.plateCurrent)).toEqual([0.072, 0.071, 0.07])
})

it('a short stops the test: nothing was set or read, and that is not zero', async () => {
  const id = await tubeInStock({}, null)
  await add(id, { shorts: true, sections: [section(null)] })
  expect(await listTests(id)).toMatchObject([
    { shorts: true, plateVoltage: null, screenVoltage: null, gridVoltage: null, sections: [{ plateCurrent: null }] },
  ])
  expect(await findTube(id)).toMatchObject({ condition: 'used-tested' })
})

it('the tube becomes a reject only when that is asked for, and can then be found as one', async () => {
  const id = await tubeInStock({}, null)
  await add(id, { shorts: true, sections: [section(null)] }, true)
  expect(await findTube(id)).toMatchObject({ condition: 'reject', version: 2 })
  expect(await database.tube.count({ where: { id, search: { contains: 'reject' } } })).toBe(1)
})

it('a rectifier is tested without a grid, even when its type is corrected later; a grid at 0 V is a voltage', async () => {
  const rectifier = await tubeInStock({ designation: '5AR4' }, null)
  await add(rectifier, { screenVoltage: null, gridVoltage: null, sections: [section(100), section(98, null, 2)] })
  expect(await listTests(rectifier)).toMatchObject([{ plateVoltage: 250, gridVoltage: null }])
  await keepTube(atBench(), { id: rectifier, version: 1, details: tubeDetails({ designation: 'EL34' }), test: null })
  expect(await listTests(rectifier)).toMatchObject([{ gridVoltage: null }])
  const triode = await tubeInStock({ designation: '6SN7GT' }, null)
  await add(triode, { screenVoltage: null, gridVoltage: 0, sections: [section(9)] })
  expect(await listTests(triode)).toMatchObject([{ gridVoltage: 0 }])
})

it('takes the calibration of the shop’s instrument of that name, as it stands that day', async () => {
  await database.instrument.create({
    data: { name: 'Bench tester 1', kind: 'tube tester', calibratedOn: '2031-02-01' },
  })
  const id = await tubeInStock({}, null)
  await add(id)
  await database.instrument.updateMany({ data: { calibratedOn: '2031-05-05' } })
  await add(id, { instrumentName: 'Borrowed tester' })
  expect((await listTests(id)).map(({ calibratedOn }) => calibratedOn)).toEqual([null, '2031-02-01'])
})

it('is bench work, and asks for a tube that is there', async () => {
  const id = await tubeInStock({}, null)
  expect(await add(id, {}, false, atCounter())).toEqual({
    ok: false,
    fault: { code: 'not-your-duty', duty: 'bench-work' },
  })
  expect(await add('nobody')).toMatchObject({ ok: false, fault: { code: 'not-found' } })
  expect(await listTests(id)).toEqual([])
})

it('tomorrow in London is still today in New York: the shop’s day counts', async () => {
  const id = await tubeInStock({}, null)
  const lateEvening = new Date('2031-05-07T02:00:00Z')
  const early = await add(id, { day: '2031-05-07' as Day }, false, atBench('Ines', lateEvening))
  expect(early).toMatchObject({ ok: false, fault: { code: 'tubes-refused', faults: [{ code: 'day-ahead' }] } })
  expect((await add(id, {}, false, atBench('Ines', lateEvening))).ok).toBe(true)
  expect((await listTests(id))[0]?.testedAt).toEqual(lateEvening)
  expect(lateEvening > NOW).toBe(true)
})
