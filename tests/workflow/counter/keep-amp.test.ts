import { describe, expect, it } from 'vitest'
import { findAmp, listAmps, listAmpsOfModel } from '@/lib/store/amp'
import { listHistoryOf } from '@/lib/store/history'
import { keepAmp } from '@/lib/workflow/counter/keep-amp'
import { ampDetails, ownerOnFile } from '@/tests/support/amps'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, atCounter, NOW } from '@/tests/support/person-at-work'

freshDatabase()

async function kept(over = {}, owner?: string) {
  const customerId = owner ?? (await ownerOnFile())
  const made = await keepAmp(atCounter(), { id: null, customerId, details: ampDetails(over) })
  if (!made.ok) throw new Error(made.fault.code)
  return made.value
}

describe('an amplifier written down', () => {
  it('is found again with its owner’s id, and the history says who wrote what', async () => {
    const owner = await ownerOnFile()
    const id = await kept({ serial: 'A-77' }, owner)
    expect(await findAmp(id)).toEqual({ id, customerId: owner, version: 1, ...ampDetails({ serial: 'A-77' }) })
    const [entry] = await listHistoryOf('amp', id)
    expect(entry).toMatchObject({ person: 'Odo', at: NOW, did: 'Amplifier written down' })
    expect(entry?.changes).toContainEqual({ label: 'Mains', from: '', to: '230 V' })
  })

  it('for an owner who is not there is refused', async () => {
    const made = await keepAmp(atCounter(), { id: null, customerId: 'nobody', details: ampDetails() })
    expect(made).toEqual({ ok: false, fault: { code: 'not-found', what: 'The owner' } })
  })
})

describe('a correction', () => {
  it('made from an older version is refused, names the colleague and tells what changed', async () => {
    const id = await kept()
    await keepAmp(atBench('Ines'), { id, version: 1, details: ampDetails({ fuse: 'T 2 A' }) })
    const late = await keepAmp(atCounter(), { id, version: 1, details: ampDetails({ note: 'red covering' }) })
    const changes = [{ label: 'Fuse', from: 'T 1 A', to: 'T 2 A' }]
    expect(late).toMatchObject({ ok: false, fault: { code: 'stale', savedBy: 'Ines', savedAt: NOW, changes } })
    expect(await findAmp(id)).toMatchObject({ fuse: 'T 2 A', note: '', version: 2 })
  })
})

describe('looking an amplifier up', () => {
  it.each(['b-1204', 'B1204', 'quellmark', 'brace 40', 'zsófia', 'Zsofia brace'])(
    'finds it by “%s”',
    async (search) => {
      if ((await listAmps('quellmark')).length === 0)
        await kept({ make: 'Quellmark', model: 'Brace 40', serial: 'B-1204' }, await ownerOnFile('Zsófia Brand'))
      const found = await listAmps(search)
      expect(found.map(({ model, ownerName }) => [model, ownerName])).toEqual([['Brace 40', 'Zsófia Brand']])
    },
  )

  it('finds nothing by words that stand on different amplifiers', async () => {
    expect(await listAmps('quellmark tilt')).toEqual([])
  })

  it('takes “Lark-10” and “lark 10” for one model, “Lark 100” for another', async () => {
    await kept({ make: 'Ostrel', model: 'Lark 10', serial: '1' })
    await kept({ make: 'Ostrel', model: 'Lark 100', serial: '2' })
    expect((await listAmpsOfModel('ostrel', 'LARK-10')).map(({ serial }) => serial)).toEqual(['1'])
  })
})
