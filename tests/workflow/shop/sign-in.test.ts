import { describe, expect, it } from 'vitest'
import { FAILURES_BY_NAME, FAILURES_IN_SHOP, LIMIT_WINDOW_MINUTES } from '@/lib/domain/person/sign-in-limit'
import { db, inTransaction } from '@/lib/store/database'
import { createPerson, updatePerson } from '@/lib/store/person'
import { hashPassPhrase, passPhraseFits } from '@/lib/workflow/shop/pass-phrase'
import { personOfToken, SESSION_DAYS, signIn, signOut } from '@/lib/workflow/shop/sign-in'
import { freshDatabase } from '@/tests/support/fresh-database'

freshDatabase()

const PHRASE = 'a few words are good'
const passwordHash = await hashPassPhrase(PHRASE)
const at = (minutes: number) => new Date(Date.parse('2031-05-06T09:00:00Z') + minutes * 60_000)

async function person(signInName: string): Promise<string> {
  const details = { name: signInName, signInName, role: 'counter', keepsShop: false, passwordHash } as const
  const id = await inTransaction((tx) => createPerson(tx, details))
  if (!id) throw new Error(`${signInName} is taken`)
  return id
}

async function signedIn(signInName: string, now: Date): Promise<string> {
  const done = await signIn({ signInName, passPhrase: PHRASE }, now)
  if (!done.ok) throw new Error(done.fault)
  return done.value.token
}

const tryWrong = (signInName: string, now: Date) => signIn({ signInName, passPhrase: 'wrong' }, now)
const forget = () => db().signInFailure.deleteMany()

describe('a pass phrase', () => {
  it('is kept as scrypt with a salt of its own', async () => {
    const again = await hashPassPhrase(PHRASE)
    expect(again).toMatch(/^scrypt\$32768\$8\$1\$[\w+/]{22}==\$[\w+/]{43}=$/)
    expect(again).not.toBe(passwordHash)
    expect(await passPhraseFits(PHRASE, again)).toBe(true)
    expect(await passPhraseFits(`${PHRASE} `, again)).toBe(false)
  })

  // RFC 7914, section 12: scrypt("password", "NaCl", N = 1024, r = 8, p = 16). Of the 64 bytes printed there the first
  // 32, as a shorter key is the beginning of a longer one.
  it('fits the hash of the published scrypt vector', async () => {
    const key = Buffer.from('fdbabe1c9d3472007856e7190d01e9fe7c6ad7cbc8237830e77376634b373162', 'hex').toString(
      'base64',
    )
    const stored = `scrypt$1024$8$16$${Buffer.from('NaCl').toString('base64')}$${key}`
    expect(await passPhraseFits('password', stored)).toBe(true)
    expect(await passPhraseFits('passwort', stored)).toBe(false)
  })

  it('typed on another keyboard is the same letters', async () => {
    expect(await passPhraseFits('Ro\u0308hre glu\u0308ht', await hashPassPhrase('R\u00f6hre gl\u00fcht'))).toBe(true)
  })

  it('kept in an unknown form is told, not refused', async () => {
    await expect(passPhraseFits(PHRASE, 'plain')).rejects.toThrow('unknown form')
  })
})

describe('a session', () => {
  it(`lasts ${SESSION_DAYS} days and not a moment longer`, async () => {
    const id = await person('odo')
    const token = await signedIn('odo', at(0))
    const end = SESSION_DAYS * 24 * 60
    expect(await personOfToken(token, at(0))).toMatchObject({ id, name: 'odo' })
    expect(await personOfToken(token, at(end - 1))).not.toBeNull()
    expect(await personOfToken(token, at(end))).toBeNull()
  })

  it('is not kept as the token itself', async () => {
    const token = await signedIn('odo', at(1))
    const kept = await db().signInSession.findMany()
    expect(kept.length).toBeGreaterThan(0)
    expect(kept.some(({ tokenHash }) => tokenHash === token || tokenHash.includes(token))).toBe(false)
    expect(kept.every(({ tokenHash }) => /^[0-9a-f]{64}$/.test(tokenHash))).toBe(true)
  })

  it('ends by signing out, and no other with it', async () => {
    const [one, other] = [await signedIn('odo', at(2)), await signedIn('odo', at(2))]
    await signOut(one)
    expect(await personOfToken(one, at(3))).toBeNull()
    expect(await personOfToken(other, at(3))).not.toBeNull()
  })

  it('is worth nothing once the person has left', async () => {
    const id = await person('leaver')
    const token = await signedIn('leaver', at(4))
    await inTransaction((tx) => updatePerson(tx, id, { active: false }))
    expect(await personOfToken(token, at(5))).toBeNull()
    expect(await signIn({ signInName: 'leaver', passPhrase: PHRASE }, at(5))).toEqual({ ok: false, fault: 'wrong' })
  })
})

describe('failed tries', () => {
  it('a wrong phrase and an unknown name are refused in one word', async () => {
    await forget()
    await person('ines')
    expect(await tryWrong('ines', at(10))).toEqual({ ok: false, fault: 'wrong' })
    expect(await tryWrong('nobody', at(10))).toEqual({ ok: false, fault: 'wrong' })
  })

  it(`after ${FAILURES_BY_NAME} the name is barred, even with the right phrase, for ${LIMIT_WINDOW_MINUTES} minutes`, async () => {
    await forget()
    for (let count = 0; count < FAILURES_BY_NAME; count += 1) expect((await tryWrong('ines', at(20))).ok).toBe(false)
    const right = { signInName: 'Ines', passPhrase: PHRASE }
    expect(await signIn(right, at(21))).toEqual({ ok: false, fault: 'too-many' })
    expect((await signIn({ signInName: 'odo', passPhrase: PHRASE }, at(21))).ok).toBe(true)
    expect((await signIn(right, at(20 + LIMIT_WINDOW_MINUTES))).ok).toBe(true)
  })

  it('of many at one moment no more than the limit are looked at', async () => {
    await forget()
    const tries = await Promise.all(Array.from({ length: FAILURES_BY_NAME + 4 }, () => tryWrong('ines', at(60))))
    const faults = tries.map((each) => (each.ok ? 'in' : each.fault))
    expect(faults.filter((fault) => fault === 'wrong')).toHaveLength(FAILURES_BY_NAME)
    expect(faults.filter((fault) => fault === 'too-many')).toHaveLength(4)
  })

  it('are forgotten when the right phrase comes', async () => {
    await forget()
    for (let count = 0; count < FAILURES_BY_NAME - 1; count += 1) await tryWrong('ines', at(90))
    await signedIn('ines', at(91))
    expect((await tryWrong('ines', at(92))).ok).toBe(false)
    await signedIn('ines', at(92))
  })

  it(`over many names the whole shop is barred after ${FAILURES_IN_SHOP}`, async () => {
    await forget()
    const rows = Array.from({ length: FAILURES_IN_SHOP }, (_, index) => ({ key: `guess${index}`, at: at(120) }))
    await db().signInFailure.createMany({ data: rows })
    expect(await signIn({ signInName: 'ines', passPhrase: PHRASE }, at(121))).toEqual({ ok: false, fault: 'too-many' })
  })
})
