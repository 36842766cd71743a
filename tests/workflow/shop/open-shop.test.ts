import { expect, it } from 'vitest'
import { db } from '@/lib/store/database'
import { listHistoryOf } from '@/lib/store/history'
import { listOperations } from '@/lib/store/operation'
import { listPeople } from '@/lib/store/person'
import { findShop } from '@/lib/store/shop'
import { openShop } from '@/lib/workflow/shop/open-shop'
import { personOfToken, signIn } from '@/lib/workflow/shop/sign-in'
import { freshDatabase } from '@/tests/support/fresh-database'
import { NOW } from '@/tests/support/person-at-work'
import { SHOP } from '@/tests/support/stocked-shop'

freshDatabase()

const first = {
  name: 'Ada Bench',
  signInName: ' Ada ',
  passPhrase: 'valves and tubes glow',
  role: 'technician',
} as const

it('two at once open one shop', async () => {
  const [one, other] = await Promise.all([openShop(SHOP, first, NOW), openShop({ ...SHOP, name: 'Other' }, first, NOW)])
  expect([one.ok, other.ok].sort()).toEqual([false, true])
  expect([one, other].find(({ ok }) => !ok)).toEqual({ ok: false, fault: 'already-open' })
  expect(await db().shop.count()).toBe(1)
  expect(await listPeople()).toHaveLength(1)
})

it('the first person keeps it and is signed in, under a name without capitals or spaces around it', async () => {
  const signedIn = await signIn({ signInName: 'ADA', passPhrase: first.passPhrase }, NOW)
  if (!signedIn.ok) throw new Error(signedIn.fault)
  expect(await personOfToken(signedIn.value.token, NOW)).toMatchObject({
    name: 'Ada Bench',
    signInName: 'ada',
    role: 'technician',
    keepsShop: true,
    active: true,
  })
})

it('the settings are those typed, and no demo', async () => {
  const shop = await findShop()
  expect(shop).toMatchObject({
    currency: SHOP.currency,
    hourlyRate: 9000,
    taxMilliPercent: 8875,
    demo: false,
    version: 1,
  })
  expect(shop?.idleFixed).toEqual({ low: 60, high: 70 })
})

it('usual operations stand in it, by the hour and without a price', async () => {
  const operations = await listOperations()
  expect(operations.length).toBeGreaterThan(5)
  expect(
    operations.every(({ flatPrice, milliHours }) => flatPrice === null && milliHours !== null && milliHours > 0),
  ).toBe(true)
  expect(operations.map(({ place }) => place)).toEqual(operations.map((_, place) => place))
})

it('its history begins with the opening', async () => {
  expect(await listHistoryOf('shop', '1')).toMatchObject([{ did: 'Shop opened', person: 'Ada Bench', at: NOW }])
})
