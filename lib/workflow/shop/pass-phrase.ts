/**
 * Hashing with scrypt (RFC 7914) from node:crypto. N = 2^15, r = 8, p = 1 takes
 * 32 MiB and about a tenth of a second. Stored as "scrypt$N$r$p$salt$hash".
 */
import { randomBytes, type ScryptOptions, scrypt, timingSafeEqual } from 'node:crypto'

const COST = { N: 2 ** 15, r: 8, p: 1 } as const
const LENGTH = 32

function derive(phrase: string, salt: Buffer, { N, r, p }: { N: number; r: number; p: number }): Promise<Buffer> {
  const options: ScryptOptions = { N, r, p, maxmem: 256 * N * r }
  return new Promise((resolve, reject) =>
    scrypt(phrase.normalize('NFKC'), salt, LENGTH, options, (error, key) => (error ? reject(error) : resolve(key))),
  )
}

export async function hashPassPhrase(phrase: string): Promise<string> {
  const salt = randomBytes(16)
  const key = await derive(phrase, salt, COST)
  return ['scrypt', COST.N, COST.r, COST.p, salt.toString('base64'), key.toString('base64')].join('$')
}

export async function passPhraseFits(phrase: string, stored: string): Promise<boolean> {
  const [kind, N, r, p, salt, hash] = stored.split('$')
  if (kind !== 'scrypt' || !salt || !hash) throw new Error('A stored pass phrase has an unknown form')
  const expected = Buffer.from(hash, 'base64')
  const key = await derive(phrase, Buffer.from(salt, 'base64'), { N: Number(N), r: Number(r), p: Number(p) })
  return timingSafeEqual(key, expected)
}
