import { beforeAll, describe, expect, it } from 'vitest'
import { listJobHistory } from '@/lib/store/history'
import { listSafetyLines } from '@/lib/store/safety'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { finishWork } from '@/lib/workflow/work/do-work'
import { releaseJob } from '@/lib/workflow/work/release-job'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atCounter } from '@/tests/support/person-at-work'
import { done, jobOf, jobOnBench, shopOnFile } from '@/tests/support/quoted-job'
import { openStockedShop } from '@/tests/support/stocked-shop'
import { acceptedJob, fitBoth, instrumentOnFile, later, read, signAll, signed } from '@/tests/support/tested-job'

freshDatabase()
beforeAll(() => openStockedShop())

const lineOf = async (number: string, check: string) =>
  (await listSafetyLines((await jobOf(number)).id)).find((line) => line.check === check)

describe('signing a line', () => {
  it('keeps value, limit, instrument with its calibration, name and time', async () => {
    const number = await jobOnBench()
    done(await signed(number, 'earth-bond'))
    expect(await lineOf(number, 'earth-bond')).toMatchObject({
      outcome: 'pass',
      value: 0.11,
      valueText: '0.11 Ω',
      limitText: 'at most 0.3 Ω',
      instrument: 'Safety tester',
      calibratedOn: '2031-02-11',
      signedBy: 'Ines',
      signedAt: later(40).now,
      version: 1,
    })
    expect((await listJobHistory((await jobOf(number)).id))[0]).toMatchObject({
      person: 'Ines',
      did: 'Safety ground bond signed: pass',
    })
  })

  it('again replaces it, and the history keeps both', async () => {
    const number = await jobOnBench()
    done(await signed(number, 'earth-bond', { outcome: 'fail', value: 0.8 }))
    done(await signed(number, 'earth-bond', { value: 0.12 }, later(50, 'Oda')))
    expect(await lineOf(number, 'earth-bond')).toMatchObject({ outcome: 'pass', signedBy: 'Oda', version: 2 })
    const [second, first] = await listJobHistory((await jobOf(number)).id)
    expect(first?.changes).toContainEqual({ label: 'Value', from: '', to: '0.8 Ω' })
    expect(second?.did).toBe('Safety ground bond signed again: pass')
    expect(second?.changes).toEqual([
      { label: 'Outcome', from: 'fail', to: 'pass' },
      { label: 'Value', from: '0.8 Ω', to: '0.12 Ω' },
    ])
  })

  it('a value that breaks its limit is not signed as a pass, and nothing is written', async () => {
    const number = await jobOnBench()
    const refused = await signed(number, 'leakage', { value: 0.0042 })
    expect(refused).toMatchObject({ ok: false, fault: { code: 'limit-broken' } })
    if (!refused.ok)
      expect(stepFaultText(refused.fault, await shopOnFile())).toBe(
        'Protective conductor current: 4.2 mA breaks the limit of at most 3.5 mA, so it cannot pass. Mend it and read again, or sign it as failed.',
      )
    expect(await lineOf(number, 'leakage')).toBeUndefined()
    done(await signed(number, 'leakage', { outcome: 'fail', value: 0.0042 }))
    expect(await lineOf(number, 'leakage')).toMatchObject({ outcome: 'fail', valueText: '4.2 mA' })
  })

  it('is a technician’s', async () => {
    const number = await jobOnBench()
    const refused = await signed(number, 'cord', {}, atCounter())
    expect(refused).toMatchObject({ ok: false, fault: { code: 'not-your-duty', duty: 'sign-off' } })
    expect(await listSafetyLines((await jobOf(number)).id)).toEqual([])
  })

  it('signed by two at once, the second is told and nothing is lost', async () => {
    const number = await jobOnBench()
    done(await signed(number, 'cord'))
    const second = await signed(
      number,
      'cord',
      { version: 0, outcome: 'fail', reason: 'strain relief loose' },
      later(41, 'Oda'),
    )
    expect(second).toMatchObject({ ok: false, fault: { code: 'stale', savedBy: 'Ines' } })
    expect(await lineOf(number, 'cord')).toMatchObject({ outcome: 'pass', version: 1 })
  })

  it('an instrument nobody knows is refused', async () => {
    const number = await jobOnBench()
    await instrumentOnFile()
    expect(await signed(number, 'earth-bond', { instrumentId: 'gone' })).toMatchObject({
      ok: false,
      fault: { code: 'not-found' },
    })
  })
})

describe('idle', () => {
  it('takes its value from the readings after the work, with the meter that read them', async () => {
    const { number } = await acceptedJob()
    await fitBoth(number)
    expect(await signed(number, 'idle')).toMatchObject({ ok: false, fault: { code: 'idle-not-read' } })
    done(await read(number))
    done(await signed(number, 'idle'))
    // Shared by two: 19 V over 250 Ω is 38 mA each, less some 5 % screen, at 321 V: near 39 % of 30 W.
    const line = await lineOf(number, 'idle')
    expect(line?.value).toBeGreaterThan(36)
    expect(line?.value).toBeLessThan(46)
    expect(line).toMatchObject({ instrument: 'Meter 1', calibratedOn: '2031-01-20' })
  })

  it('above the rating it cannot pass, whatever is said', async () => {
    const { number } = await acceptedJob()
    await fitBoth(number)
    // 60 V over 250 Ω: 120 mA each at 380 V is well above 30 W.
    done(await read(number, { plateVolts: 440, cathodeVolts: 60 }))
    expect(await signed(number, 'idle', { reason: 'as the customer wants' })).toMatchObject({
      ok: false,
      fault: { code: 'idle-over' },
    })
    done(await signed(number, 'idle', { outcome: 'fail' }))
    expect(await lineOf(number, 'idle')).toMatchObject({ outcome: 'fail' })
  })

  it('readings from before the tube went in do not count, nor does one socket of two', async () => {
    const { number } = await acceptedJob()
    done(await read(number, { step: later(10) }))
    await fitBoth(number)
    expect(await signed(number, 'idle')).toMatchObject({ ok: false, fault: { code: 'idle-before-fitting' } })
    done(await read(number, { positions: ['V3'] }))
    expect(await signed(number, 'idle')).toMatchObject({
      ok: false,
      fault: { code: 'idle-not-judged', positions: ['V4'] },
    })
  })
})

describe('a line that fails after the release', () => {
  it('takes the job back to testing', async () => {
    const { number } = await acceptedJob()
    await fitBoth(number)
    done(await finishWork(later(25), number))
    done(await read(number))
    await signAll(number)
    done(await releaseJob(later(50), await shopOnFile(), number))
    done(await signed(number, 'listening', { outcome: 'fail', reason: 'crackles when warm' }, later(60)))
    expect((await jobOf(number)).state).toBe('testing')
  })
})
