import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { money } from '@/lib/domain/money'
import type { PartDetails } from '@/lib/domain/stock/part'
import { MOST_PHOTO_BYTES } from '@/lib/domain/stock/photo'
import { NOTHING_FURTHER } from '@/lib/domain/stock/tube-further'
import type { TubeLotDetails } from '@/lib/domain/stock/tube-lot'
import { listHistoryOf } from '@/lib/store/history'
import { findPart } from '@/lib/store/part'
import { findTube, listTubes } from '@/lib/store/tube'
import { findLot } from '@/lib/store/tube-lot'
import { findPhoto, listPhotos, readPicture } from '@/lib/store/tube-photo'
import { listSetMembers } from '@/lib/store/tube-set'
import { keepLot, takeFromLot } from '@/lib/workflow/stock/keep-lot'
import { changePartCount, keepPart } from '@/lib/workflow/stock/keep-part'
import { addPhoto, removePhoto } from '@/lib/workflow/stock/keep-photo'
import { keepTube } from '@/lib/workflow/stock/keep-tube'
import { PNG } from '@/tests/support/camera-pictures'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, NOW } from '@/tests/support/person-at-work'
import { openStockedShop, tubeDetails, tubeInStock } from '@/tests/support/stocked-shop'

freshDatabase()
await openStockedShop()

const settled = <T>(result: { ok: true; value: T } | { ok: false; fault: unknown }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.fault))
  return result.value
}

describe('a lot by count', () => {
  const details: TubeLotDetails = {
    ...({
      designation: 'EL84',
      condition: 'as-found',
      count: 2,
      cost: null,
      price: money(900),
      location: 'Crate 2',
    } as const),
    note: 'Clearance, untested',
  }

  it('gives one out as a tube with a mark of its own, and is one less', async () => {
    const lotId = settled(await keepLot(atBench(), { id: null, version: 0, details }))
    const tubeId = settled(await takeFromLot(atBench(), { lotId, mark: 'el 7' }))
    expect(await findTube(tubeId)).toMatchObject({ mark: 'EL-7', family: 'EL84', price: 900, location: 'Crate 2' })
    expect(await findLot(lotId)).toMatchObject({ count: 1, version: 2 })
  })

  it('gives out no more than there are, and none under a mark that is taken', async () => {
    const lotId = settled(await keepLot(atBench(), { id: null, version: 0, details: { ...details, count: 1 } }))
    expect(await takeFromLot(atBench(), { lotId, mark: 'EL-7' })).toMatchObject({
      fault: { faults: [{ code: 'mark-taken' }] },
    })
    expect(await findLot(lotId)).toMatchObject({ count: 1 })
    await takeFromLot(atBench(), { lotId, mark: '' })
    expect(await takeFromLot(atBench(), { lotId, mark: '' })).toMatchObject({ fault: { code: 'lot-empty' } })
  })

  it('saved by two people, is told to the second', async () => {
    const id = settled(await keepLot(atBench(), { id: null, version: 0, details }))
    await keepLot(atBench('Odo'), { id, version: 1, details: { ...details, count: 5 } })
    expect(await keepLot(atBench(), { id, version: 1, details })).toMatchObject({
      fault: { code: 'stale', savedBy: 'Odo' },
    })
  })
})

describe('a part', () => {
  const details: PartDetails = {
    ...({
      name: 'Fuse',
      kind: 'fuse',
      value: 'T 2 A 250 V',
      count: 10,
      cost: null,
      price: money(80),
      reorderLevel: 5,
    } as const),
    location: '',
  }

  it('changes its count with the reason in its history, and never below nothing', async () => {
    const partId = settled(await keepPart(atBench(), { id: null, version: 0, details }))
    settled(await changePartCount(atBench(), { partId, by: -7, reason: 'job 1047-0' }))
    expect(await findPart(partId)).toMatchObject({ count: 3 })
    expect(await changePartCount(atBench(), { partId, by: -4, reason: 'more' })).toMatchObject({
      fault: { code: 'count-below-zero', count: 3, by: -4 },
    })
    expect(await listHistoryOf('part', partId)).toMatchObject([
      { did: '7 taken away', changes: [{ from: '10', to: '3' }, { to: 'job 1047-0' }] },
      { did: 'Part written down' },
    ])
  })
})

describe('what is known further of a tube', () => {
  const further = { ...NOTHING_FURTHER, getters: 'two, square', used: 'unused', setName: 'Quad A' } as const

  it('is kept, is found by, and stays when a correction says nothing of it', async () => {
    const id = settled(
      await keepTube(atBench(), { id: null, version: 0, details: tubeDetails({ mark: 'F-1' }), further, test: null }),
    )
    settled(
      await keepTube(atBench(), {
        id,
        version: 1,
        details: tubeDetails({ mark: 'F-1', location: 'Case' }),
        test: null,
      }),
    )
    expect(await findTube(id)).toMatchObject({ location: 'Case', further })
    const found = await listTubes({ search: 'square quad', now: NOW })
    expect(found.tubes.map(({ tube }) => tube.mark)).toEqual(['F-1'])
  })

  it('a set is one however its name is written, and a changed fact stands in the history', async () => {
    const id = settled(
      await keepTube(atBench(), {
        id: null,
        version: 0,
        details: tubeDetails({ mark: 'F-2' }),
        further: { ...further, setName: 'quad a' },
        test: null,
      }),
    )
    expect((await listSetMembers('QUAD A')).map(({ mark }) => mark)).toEqual(['F-1', 'F-2'])
    await keepTube(atBench(), {
      id,
      version: 1,
      details: tubeDetails({ mark: 'F-2' }),
      further: NOTHING_FURTHER,
      test: null,
    })
    const [last] = await listHistoryOf('tube', id)
    expect(last?.changes).toContainEqual({ label: 'Getters', from: 'two, square', to: '' })
  })
})

describe('pictures of a tube', () => {
  const folder = () => readdirSync(join(process.env.BENCHGLOW_DATA ?? '', 'photos'))

  it('are kept under their own number whatever the file was called, and go when they are deleted', async () => {
    const tubeId = await tubeInStock({}, null)
    const id = settled(await addPhoto(atBench(), { tubeId, fileName: '../../front.png', bytes: PNG }))
    expect(folder()).toEqual([`${id}.png`])
    expect(await listPhotos(tubeId)).toMatchObject([{ name: 'front.png', format: 'png', bytes: 194, addedBy: 'Ines' }])
    const photo = await findPhoto(id)
    const kept = (photo && (await readPicture(photo))) ?? expect.fail('no picture')
    expect(Buffer.from(PNG).toString('latin1')).toContain('Lantern Street 7')
    expect(Buffer.from(kept).toString('latin1')).not.toContain('Lantern Street 7')
    expect(settled(await removePhoto(atBench(), id))).toBe(tubeId)
    expect(folder()).toEqual([])
    expect(await removePhoto(atBench(), id)).toMatchObject({ fault: { code: 'not-found' } })
  })

  it('what is no picture, cut off, empty or too big is refused, and no file is left', async () => {
    const tubeId = await tubeInStock({}, null)
    const add = (bytes: Uint8Array) => addPhoto(atBench(), { tubeId, fileName: 'a.png', bytes })
    expect(await add(new TextEncoder().encode('<script>'))).toMatchObject({ fault: { code: 'photo-no-picture' } })
    expect(await add(PNG.subarray(0, 300))).toMatchObject({ fault: { code: 'photo-damaged', name: 'a.png' } })
    expect(await add(new Uint8Array())).toMatchObject({ fault: { code: 'photo-empty' } })
    expect(await add(new Uint8Array(MOST_PHOTO_BYTES + 1))).toMatchObject({ fault: { code: 'photo-too-big' } })
    expect(folder()).toEqual([])
  })
})
