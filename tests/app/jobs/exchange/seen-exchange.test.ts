import { beforeAll, describe, expect, it } from 'vitest'
import { readSeen } from '@/app/jobs/[jobNumber]/tubes/exchange/reckoning/seen-exchange'
import { acceptedPair, asSeen, aTube, exchange } from '@/tests/support/exchanged-job'
import { freshDatabase } from '@/tests/support/fresh-database'
import { done } from '@/tests/support/quoted-job'
import { openStockedShop } from '@/tests/support/stocked-shop'

freshDatabase()
beforeAll(() => openStockedShop())

describe('what the page of an exchange showed', () => {
  it('comes back from its form whole: every part of it, so that nothing counts as changed', async () => {
    const pair = await acceptedPair()
    const asked = await asSeen(pair, await aTube())
    const { quoteId, version, out, into, beside, basis } = asked
    const seen = { quoteId, version, out, into, beside, basis }
    expect(readSeen(JSON.stringify(seen))).toEqual(seen)
    done(await exchange({ ...asked, ...readSeen(JSON.stringify(seen)) }))
  })

  it('cut short or written by somebody else it is not taken', () => {
    for (const text of [undefined, '', '{"quoteId":"', '{}', '[]', 'null']) expect(readSeen(text)).toBeNull()
  })
})
