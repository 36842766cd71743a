import { beforeAll, describe, expect, it } from 'vitest'
import { findAmpSheet } from '@/lib/store/amp'
import { listFittingsOfAmp } from '@/lib/store/fitting'
import { listHistoryOf, listJobHistory } from '@/lib/store/history'
import { findAcceptedQuote } from '@/lib/store/quote'
import { findTube } from '@/lib/store/tube'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { finishWork, tickLine } from '@/lib/workflow/work/do-work'
import { fitTube, takeTubeOut } from '@/lib/workflow/work/fit-tubes'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atCounter } from '@/tests/support/person-at-work'
import { done, draftWith, holdOf, jobOf, jobOnBench, send, shopOnFile } from '@/tests/support/quoted-job'
import { openStockedShop, tubeInStock } from '@/tests/support/stocked-shop'
import { acceptedJob, fitBoth, later } from '@/tests/support/tested-job'

freshDatabase()
beforeAll(() => openStockedShop())

async function socket(number: string, position: string) {
  const sheet = await findAmpSheet((await jobOf(number)).ampId)
  const found = sheet?.sockets.find((each) => each.position === position)
  if (!sheet || !found) throw new Error(`No ${position}`)
  return { ...found, ampVersion: sheet.amp.version }
}

const markOf = async (id: string) => (await findTube(id))?.mark ?? ''
const did = async (number: string) => (await listJobHistory((await jobOf(number)).id)).map((entry) => entry.did)
const fittingsOf = async (number: string) => listFittingsOfAmp((await jobOf(number)).ampId)

describe('fitting a tube', () => {
  it('changes stock book, socket, sheet and quote line together', async () => {
    const { number, tubeIds } = await acceptedJob()
    const before = await socket(number, 'V3')
    done(await fitTube(later(20), number, 'V3'))
    const mark = await markOf(tubeIds[0])
    const after = await socket(number, 'V3')
    expect(after).toMatchObject({ typeFitted: '6L6GC', markFitted: mark, ampVersion: before.ampVersion + 1 })
    expect((await findTube(tubeIds[0]))?.whereabouts).toBe('fitted')
    const quote = await findAcceptedQuote((await jobOf(number)).id)
    expect(quote?.lines.find(({ tubeId }) => tubeId === tubeIds[0])).toMatchObject({
      doneBy: 'Ines',
      doneAt: later(20).now,
    })
    expect((await did(number))[0]).toBe(`${mark} fitted in V3`)
    expect((await listHistoryOf('tube', tubeIds[0]))[0]?.did).toBe(`Fitted in V3 of Corvane Tilt 20, job ${number}`)
    const [told] = await listHistoryOf('amp', (await jobOf(number)).ampId)
    expect(told?.changes).toEqual([{ label: 'V3', from: '6V6GT, mark T-101', to: `6L6GC, mark ${mark}` }])
  })

  it('gives the tube that came in its place in the past of the socket', async () => {
    const { number, tubeIds } = await acceptedJob()
    done(await fitTube(later(20), number, 'V3'))
    const [old, fresh] = await fittingsOf(number)
    expect(old).toMatchObject({
      type: '6V6GT',
      mark: 'T-101',
      tubeId: null,
      fittedBy: 'as received',
      removedAt: later(20).now,
    })
    expect(fresh).toMatchObject({ type: '6L6GC', tubeId: tubeIds[0], fittedBy: 'Ines', removedAt: null })
  })

  it('is refused a second time, naming tube, socket and job', async () => {
    const { number, tubeIds } = await acceptedJob()
    done(await fitTube(later(20), number, 'V3'))
    const again = await fitTube(later(21), number, 'V3')
    expect(again).toMatchObject({
      ok: false,
      fault: { code: 'tube-not-free', why: 'fitted', jobNumber: number, position: 'V3' },
    })
    if (!again.ok)
      expect(stepFaultText(again.fault, await shopOnFile())).toContain(
        `${await markOf(tubeIds[0])}, chosen for V3, was fitted on job ${number}`,
      )
    expect((await fittingsOf(number)).filter(({ tubeId }) => tubeId === tubeIds[0])).toHaveLength(1)
  })

  it('is refused without an accepted quote, for a socket it does not name, and at the counter', async () => {
    const waiting = await jobOnBench()
    await draftWith(waiting, [await tubeInStock()])
    done(await send(waiting))
    expect(await fitTube(later(20), waiting, 'V3')).toMatchObject({
      ok: false,
      fault: { code: 'no-tube-ordered', position: 'V3' },
    })
    const { number } = await acceptedJob()
    expect(await fitTube(later(20), number, 'V1')).toMatchObject({ ok: false, fault: { code: 'no-tube-ordered' } })
    expect(await fitTube(later(20), number, 'V9')).toMatchObject({ ok: false, fault: { code: 'socket-not-on-sheet' } })
    expect(await fitTube(atCounter(), number, 'V3')).toMatchObject({
      ok: false,
      fault: { code: 'not-your-duty', duty: 'bench-work' },
    })
  })
})

describe('taking it out again', () => {
  it('brings back what was there, and the tube is reserved for the job as before', async () => {
    const { number, tubeIds } = await acceptedJob()
    await fitBoth(number)
    done(await takeTubeOut(later(25), number, 'V3'))
    expect(await socket(number, 'V3')).toMatchObject({ typeFitted: '6V6GT', markFitted: 'T-101' })
    expect((await findTube(tubeIds[0]))?.whereabouts).toBe('in-stock')
    expect(await holdOf(tubeIds[0])).toEqual({ hold: 'reserved', job: number, until: null })
    expect((await did(number))[0]).toBe(`${await markOf(tubeIds[0])} taken out of V3 again`)
    expect(await takeTubeOut(later(26), number, 'V3')).toMatchObject({ ok: false, fault: { code: 'not-fitted-here' } })
    done(await fitTube(later(27), number, 'V3'))
    // Row by row, for ever: as received, in and out, in once more.
    const rows = (await fittingsOf(number)).filter(({ mark }) => mark !== 'T-102')
    expect(
      rows.filter(({ tubeId }) => tubeId === tubeIds[0]).map(({ removedAt }) => removedAt?.toISOString() ?? null),
    ).toEqual([later(25).now.toISOString(), null])
    expect(rows.filter(({ mark }) => mark === 'T-101').map(({ removedAt }) => removedAt)).toEqual([later(27).now])
  })
})

describe('operations', () => {
  it('are ticked with who and when, and the tick is taken back', async () => {
    const { number } = await acceptedJob()
    const quote = await findAcceptedQuote((await jobOf(number)).id)
    const line = quote?.lines.find(({ kind }) => kind === 'labour')
    if (!line) throw new Error('no labour line')
    const tick = { jobNumber: number, lineId: line.id, done: true }
    done(await tickLine(later(20), tick))
    done(await tickLine(later(21), tick))
    const of = async () => (await findAcceptedQuote((await jobOf(number)).id))?.lines.find(({ id }) => id === line.id)
    expect(await of()).toMatchObject({ doneAt: later(20).now, doneBy: 'Ines' })
    done(await tickLine(later(22), { ...tick, done: false }))
    expect(await of()).toMatchObject({ doneAt: null, doneBy: '' })
    expect((await did(number)).slice(0, 2)).toEqual(['Not done after all: Set idle current', 'Done: Set idle current'])
    expect(await tickLine(later(23), { ...tick, lineId: 'nothing' })).toMatchObject({
      ok: false,
      fault: { code: 'not-found' },
    })
  })

  it('done, the job goes on to testing', async () => {
    const { number } = await acceptedJob()
    done(await finishWork(later(20), number))
    expect((await jobOf(number)).state).toBe('testing')
    expect((await did(number))[0]).toBe('Work done: on to testing')
  })
})
