import { beforeAll, describe, expect, it } from 'vitest'
import { findAmpSheet } from '@/lib/store/amp'
import { listHistoryOf } from '@/lib/store/history'
import { copyAmpSheet } from '@/lib/workflow/bench/copy-amp-sheet'
import { keepAmpSheet } from '@/lib/workflow/bench/keep-amp-sheet'
import { ampOnFile, cathodePair } from '@/tests/support/amps'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench } from '@/tests/support/person-at-work'
import { openStockedShop } from '@/tests/support/stocked-shop'

freshDatabase()
beforeAll(openStockedShop)

async function withSheet(over = {}) {
  const ampId = await ampOnFile(over)
  const sockets = cathodePair().map((socket) => ({ ...socket, id: null }))
  await keepAmpSheet(atBench(), { ampId, version: 1, outputClass: 'push-pull', sockets })
  return ampId
}

const socketsOf = async (ampId: string) => (await findAmpSheet(ampId))?.sockets ?? []
const copy = (ampId: string, fromAmpId: string, version = 1) => copyAmpSheet(atBench(), { ampId, version, fromAmpId })

describe('a sheet copied from the same model', () => {
  it('brings every value but the marks of the tubes, as sockets of its own', async () => {
    const [from, onto] = [await withSheet({ serial: '0417' }), await ampOnFile({ serial: '0998', model: 'TILT-20' })]
    expect(await copy(onto, from)).toEqual({ ok: true, value: null })
    const [there, here] = [await socketsOf(from), await socketsOf(onto)]
    const bare = (sockets: typeof here) => sockets.map(({ id: _id, markFitted: _mark, ...rest }) => rest)
    expect(bare(here)).toEqual(bare(there))
    expect(here.every(({ markFitted }) => markFitted === '')).toBe(true)
    expect(here.some(({ id }) => there.some((other) => other.id === id))).toBe(false)
  })

  it('says in the history from which amplifier', async () => {
    const [from, onto] = [await withSheet({ serial: '0417' }), await ampOnFile({ serial: '0998' })]
    await copy(onto, from)
    expect((await listHistoryOf('amp', onto))[0]?.did).toBe('Sheet copied from Corvane Tilt 20, serial 0417')
  })

  it('is refused onto a sheet that has sockets', async () => {
    const [from, onto] = [await withSheet(), await withSheet()]
    expect(await copy(onto, from, 2)).toEqual({ ok: false, fault: { code: 'sheet-not-empty', sockets: 5 } })
  })

  it('is refused from another model', async () => {
    const [from, onto] = [await withSheet({ model: 'Tilt 40' }), await ampOnFile()]
    expect(await copy(onto, from)).toMatchObject({ ok: false, fault: { code: 'other-model' } })
    expect(await socketsOf(onto)).toEqual([])
  })

  it('is refused when there is nothing on it', async () => {
    const [from, onto] = [await ampOnFile(), await ampOnFile()]
    expect(await copy(onto, from)).toEqual({ ok: false, fault: { code: 'not-found', what: 'The sheet to copy' } })
  })

  it('is refused when a colleague saved the amplifier meanwhile', async () => {
    const [from, onto] = [await withSheet(), await ampOnFile()]
    expect(await copy(onto, from, 0)).toMatchObject({ ok: false, fault: { code: 'stale' } })
    expect(await socketsOf(onto)).toEqual([])
  })
})
