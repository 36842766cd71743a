import { describe, expect, it } from 'vitest'
import { listHistoryOf } from '@/lib/store/history'
import { findPerson, listPeople } from '@/lib/store/person'
import { changePassPhrase } from '@/lib/workflow/shop/change-pass-phrase'
import { addPerson, givePassPhrase, keepPerson, type NewPersonInput } from '@/lib/workflow/shop/keep-person'
import { openShop } from '@/lib/workflow/shop/open-shop'
import { personOfToken, signIn } from '@/lib/workflow/shop/sign-in'
import { freshDatabase } from '@/tests/support/fresh-database'
import { keeping } from '@/tests/support/keeper'
import { atBench, NOW } from '@/tests/support/person-at-work'
import { SHOP } from '@/tests/support/stocked-shop'

freshDatabase()

const PHRASE = 'valves and tubes glow'
const opened = await openShop(SHOP, { name: 'Ada', signInName: 'ada', passPhrase: PHRASE, role: 'counter' }, NOW)
if (!opened.ok) throw new Error(opened.fault)
const ada = (await listPeople())[0]?.id ?? ''
const asAda = keeping({ id: ada })

const odo: NewPersonInput = {
  name: 'Odo',
  role: 'technician',
  keepsShop: false,
  signInName: 'Odo',
  passPhrase: 'the second good phrase',
}

async function added(over: Partial<NewPersonInput>): Promise<string> {
  const done = await addPerson(asAda, { ...odo, ...over })
  if (!done.ok) throw new Error(done.fault.code)
  return done.value
}

async function tokenOf(signInName: string, passPhrase = odo.passPhrase): Promise<string> {
  const done = await signIn({ signInName, passPhrase }, NOW)
  if (!done.ok) throw new Error(done.fault)
  return done.value.token
}

const may = (token: string) => personOfToken(token, NOW).then((person) => person !== null)

describe('adding somebody', () => {
  it('is for whoever keeps the shop', async () => {
    expect(await addPerson(atBench(), odo)).toEqual({ ok: false, fault: { code: 'not-your-duty', duty: 'keep-shop' } })
    expect(await listPeople()).toHaveLength(1)
  })

  it('lets them sign in, and is in the history without the pass phrase', async () => {
    const id = await added({ signInName: 'Odo' })
    expect(await findPerson(id)).toMatchObject({
      name: 'Odo',
      signInName: 'odo',
      role: 'technician',
      keepsShop: false,
      active: true,
    })
    expect(await may(await tokenOf('ODO'))).toBe(true)
    const [entry] = await listHistoryOf('person', id)
    expect(entry).toMatchObject({ did: 'Added to the shop', person: 'Ada' })
    expect(JSON.stringify(entry)).not.toContain('phrase')
  })

  it('under a name that is taken is refused, capitals or not', async () => {
    const again = await addPerson(asAda, { ...odo, signInName: ' ODO ' })
    expect(again).toEqual({ ok: false, fault: { code: 'sign-in-name-taken', signInName: 'odo' } })
  })
})

describe('somebody always keeps the shop', () => {
  const details = { name: 'Ada', role: 'counter', keepsShop: true, active: true } as const

  it.each([
    ['give it up', { ...details, keepsShop: false }],
    ['leave', { ...details, active: false }],
  ])('the last one cannot %s', async (_what, changed) => {
    const refused = await keepPerson(asAda, { id: ada, details: changed })
    expect(refused).toEqual({ ok: false, fault: { code: 'last-keeper', name: 'Ada' } })
    expect(await findPerson(ada)).toMatchObject({ keepsShop: true, active: true })
  })

  it('a keeper who has left does not count', async () => {
    const gone = await added({ signInName: 'gone', keepsShop: true })
    await keepPerson(asAda, { id: gone, details: { ...details, name: 'Gone', active: false } })
    expect(await keepPerson(asAda, { id: ada, details: { ...details, keepsShop: false } })).toMatchObject({ ok: false })
  })

  it('two keepers who give it up at one moment: one of them still does', async () => {
    const other = await added({ signInName: 'other', keepsShop: true })
    const both = await Promise.all(
      [ada, other].map((id) => keepPerson(asAda, { id, details: { ...details, keepsShop: false } })),
    )
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    const keepers = (await listPeople()).filter((person) => person.keepsShop && person.active)
    expect(keepers).toHaveLength(1)
    await keepPerson(asAda, { id: ada, details })
  })
})

describe('somebody who leaves', () => {
  it('is signed out everywhere, and the others are not', async () => {
    const id = await added({ signInName: 'leaver' })
    const [one, other, adas] = [await tokenOf('leaver'), await tokenOf('leaver'), await tokenOf('ada', PHRASE)]
    const details = { name: 'Leaver', role: 'counter', keepsShop: false, active: false } as const
    expect((await keepPerson(asAda, { id, details })).ok).toBe(true)
    expect([await may(one), await may(other), await may(adas)]).toEqual([false, false, true])
    // Let back in, the old screens stay out.
    await keepPerson(asAda, { id, details: { ...details, active: true } })
    expect(await may(one)).toBe(false)
    expect((await listHistoryOf('person', id)).map(({ did }) => did)).toContain('Left the shop')
  })

  it('that nobody knows is told', async () => {
    const details = { name: 'X', role: 'counter', keepsShop: false, active: true } as const
    expect(await keepPerson(asAda, { id: 'nobody', details })).toMatchObject({
      ok: false,
      fault: { code: 'not-found' },
    })
  })
})

describe('a pass phrase', () => {
  it('given anew ends every session and the old one', async () => {
    const id = await added({ signInName: 'forgot' })
    const token = await tokenOf('forgot')
    expect(await givePassPhrase(atBench(), { id, passPhrase: 'an intruder phrase' })).toMatchObject({ ok: false })
    expect(await givePassPhrase(asAda, { id, passPhrase: 'the third good phrase' })).toEqual({ ok: true, value: null })
    expect(await may(token)).toBe(false)
    expect((await signIn({ signInName: 'forgot', passPhrase: odo.passPhrase }, NOW)).ok).toBe(false)
    expect(await may(await tokenOf('forgot', 'the third good phrase'))).toBe(true)
  })

  it('of one’s own: the present one is asked, other screens go, this one stays', async () => {
    const id = await added({ signInName: 'self' })
    const elsewhere = await tokenOf('self')
    const step = keeping({ id, name: 'Self', keepsShop: false })
    const next = 'the fourth good phrase'
    expect(await changePassPhrase(step, { present: 'wrong', next })).toEqual({
      ok: false,
      fault: { code: 'pass-phrase-wrong' },
    })
    expect(await may(elsewhere)).toBe(true)
    const done = await changePassPhrase(step, { present: odo.passPhrase, next })
    if (!done.ok) throw new Error(done.fault.code)
    expect([await may(elsewhere), await may(done.value.token)]).toEqual([false, true])
    expect(await may(await tokenOf('self', next))).toBe(true)
  })

  it('guessed at a screen left open is barred like a sign-in', async () => {
    const id = await added({ signInName: 'open' })
    const step = keeping({ id, name: 'Open', keepsShop: false })
    const guess = () => changePassPhrase(step, { present: 'guess', next: 'the fifth good phrase' })
    for (let count = 0; count < 8; count += 1)
      expect(await guess()).toMatchObject({ fault: { code: 'pass-phrase-wrong' } })
    expect(await guess()).toMatchObject({ fault: { code: 'too-many-tries' } })
    const right = { present: odo.passPhrase, next: 'the fifth good phrase' }
    expect(await changePassPhrase(step, right)).toMatchObject({ fault: { code: 'too-many-tries' } })
  })
})
