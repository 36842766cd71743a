/** A few columns of a stock read at once: the very records that speak for its tubes when all is read. */
import { beforeAll, expect, it } from 'vitest'
import type { JudgedTube } from '@/lib/domain/stock/candidate-of'
import type { StockedTube } from '@/lib/domain/stock/tube'
import { volts } from '@/lib/domain/units'
import { listBriefStock } from '@/lib/store/brief-stock'
import { db, inTransaction } from '@/lib/store/database'
import { addTest, listStockForFamily, setHold } from '@/lib/store/tube'
import { freshDatabase } from '@/tests/support/fresh-database'
import { NOW } from '@/tests/support/person-at-work'
import { jobOnFile, openStockedShop, section, testEntry, tubeInStock } from '@/tests/support/stocked-shop'

freshDatabase()
beforeAll(async () => {
  await openStockedShop()
})

const briefly = ({ tube, test, shortsFoundAt }: StockedTube): JudgedTube => {
  const { id, mark, designation, condition, price, whereabouts, hold, heldForJob, heldUntil, further } = tube
  return {
    tube: {
      ...{ id, mark, designation, condition, price, whereabouts, hold, heldForJob, heldUntil },
      ...{ heldForJobNumber: null, further: { reference: further.reference } },
    },
    test: test && judged(test),
    shortsFoundAt,
  }
}

const judged = ({
  id: _,
  testedBy: __,
  calibratedOn: ___,
  note: ____,
  sections,
  ...rest
}: NonNullable<StockedTube['test']>) => ({
  ...rest,
  sections: sections.map(({ plateCurrent, transconductance }) => ({ plateCurrent, transconductance })),
})

async function same(): Promise<readonly JudgedTube[]> {
  const whole = (await listStockForFamily('12AX7')).filter(({ test, shortsFoundAt }) => test || shortsFoundAt)
  const brief = await listBriefStock('12AX7')
  const byMark = (a: JudgedTube, b: JudgedTube) => (a.tube.mark < b.tube.mark ? -1 : 1)
  expect(brief.toSorted(byMark)).toEqual(whole.map(briefly).toSorted(byMark))
  return brief
}

const twin = (test: Parameters<typeof tubeInStock>[1] = {}, details = {}) =>
  tubeInStock(
    { designation: '12AX7', ...details },
    test && {
      screenVoltage: null,
      gridVoltage: volts(-2),
      sections: [section(1.2, 1.6), section(1.3, 1.5, 2)],
      ...test,
    },
  )

/** Days after the first. */
const again = (tubeId: string, days: number, over: Partial<Parameters<typeof testEntry>[0]>) =>
  inTransaction((tx) => {
    const { day: _, ...entry } = testEntry({ screenVoltage: null, gridVoltage: volts(-2), ...over })
    const testedAt = new Date(NOW.getTime() + days * 86_400_000)
    return addTest(tx, tubeId, { ...entry, testedAt, testedBy: 'Ines', calibratedOn: null })
  })

it('sections, what was heard, holds and reference; not another family, not one that is out, not one never tested', async () => {
  await twin()
  await twin({ noise: 'hum', microphony: 'strong, rings', leakage: 'traces', gas: 'slight' })
  await twin({ sections: [section(1.1, null)] })
  const held = await twin()
  const { id: jobId } = await jobOnFile()
  const until = new Date(NOW.getTime() + 60_000)
  await inTransaction((tx) => setHold(tx, [held], { hold: 'held', jobId, quoteId: 'quote-1', until, now: NOW }))
  await db().tube.update({ where: { id: await twin() }, data: { reference: true } })
  await db().tube.update({ where: { id: await twin() }, data: { whereabouts: 'sold' } })
  await twin(null)
  await tubeInStock()
  const brief = await same()
  expect(brief).toHaveLength(5)
  expect(brief.find(({ tube }) => tube.id === held)?.tube).toMatchObject({ hold: 'held', heldForJob: jobId })
})

it('of many tests the latest usable one, whatever came before and after it', async () => {
  const retested = await twin()
  await again(retested, 1, { sections: [section(1, 1.4), section(1.1, 1.4, 2)] })
  const stopped = await twin()
  await again(stopped, 1, { sections: [], plateVoltage: null, note: 'fuse' })
  const shorted = await twin()
  await again(shorted, 1, { shorts: true, sections: [] })
  const shortedLate = await twin()
  await again(shortedLate, 1, { shorts: true, sections: [section(1.2, 1.6), section(1.2, 1.6, 2)] })
  const cleaned = await twin()
  await again(cleaned, 1, { shorts: true, sections: [] })
  await again(cleaned, 2, { sections: [section(0.9, 1.3), section(0.9, 1.2, 2)] })
  const half = await twin()
  await again(half, 1, { sections: [section(1.2, 1.6)] })
  const secondAlone = await twin()
  await again(secondAlone, 1, { sections: [section(1.4, 1.7, 2)] })
  await again(secondAlone, 2, { sections: [section(null), section(1.5, 1.7, 2)] })
  const neverGood = await twin({ shorts: true, sections: [] })
  const brief = new Map((await same()).map((each) => [each.tube.id, each]))
  expect(brief.get(retested)?.test?.sections[0]?.plateCurrent).toBe(0.001)
  expect(brief.get(shorted)?.shortsFoundAt).not.toBeNull()
  expect(brief.get(shortedLate)?.test?.sections[0]?.plateCurrent).toBe(0.0012)
  expect(brief.get(shortedLate)?.shortsFoundAt).not.toBeNull()
  expect(brief.get(cleaned)?.shortsFoundAt).toBeNull()
  expect(brief.get(half)?.test?.sections).toHaveLength(1)
  expect(brief.get(secondAlone)?.test?.sections).toEqual([{ plateCurrent: 0.0014, transconductance: 0.0017 }])
  expect(brief.get(neverGood)?.test).toBeNull()
})
