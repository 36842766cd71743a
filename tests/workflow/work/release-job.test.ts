import { beforeAll, describe, expect, it } from 'vitest'
import { listJobHistory } from '@/lib/store/history'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { finishWork } from '@/lib/workflow/work/do-work'
import { fitTube, takeTubeOut } from '@/lib/workflow/work/fit-tubes'
import { releaseJob } from '@/lib/workflow/work/release-job'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atCounter } from '@/tests/support/person-at-work'
import { done, jobOf, shopOnFile } from '@/tests/support/quoted-job'
import { openStockedShop } from '@/tests/support/stocked-shop'
import { acceptedJob, fitBoth, later, read, signAll, signed } from '@/tests/support/tested-job'

freshDatabase()
beforeAll(() => openStockedShop())

async function testedJob(): Promise<string> {
  const { number } = await acceptedJob()
  await fitBoth(number)
  done(await finishWork(later(25), number))
  done(await read(number))
  return number
}

const release = async (number: string, step = later(50)) => releaseJob(step, await shopOnFile(), number)

describe('release', () => {
  it('with every line signed the job is ready', async () => {
    const number = await testedJob()
    await signAll(number)
    done(await release(number))
    expect((await jobOf(number)).state).toBe('ready')
    expect((await listJobHistory((await jobOf(number)).id))[0]).toMatchObject({
      did: 'Released: every safety line is signed',
      person: 'Ines',
    })
  })

  it('an empty line blocks, by name', async () => {
    const number = await testedJob()
    await signAll(number, ['soak', 'insulation'])
    const refused = await release(number)
    expect(refused).toMatchObject({
      ok: false,
      fault: { open: ['Insulation', 'Soak with a second reading'], failed: [], outdated: [] },
    })
    if (!refused.ok)
      expect(stepFaultText(refused.fault, await shopOnFile())).toBe(
        'The amplifier is not released. Not signed yet: Insulation, Soak with a second reading.',
      )
    expect((await jobOf(number)).state).toBe('testing')
  })

  it('a failed line blocks, by name, until it is signed anew', async () => {
    const number = await testedJob()
    await signAll(number)
    done(await signed(number, 'earth-bond', { outcome: 'fail', value: 0.9 }))
    expect(await release(number)).toMatchObject({ ok: false, fault: { open: [], failed: ['Safety ground bond'] } })
    done(await signed(number, 'earth-bond', { value: 0.1 }))
    done(await release(number))
  })

  it('a line not tested passes with its reason', async () => {
    const number = await testedJob()
    await signAll(number, ['full-power'])
    expect(await signed(number, 'full-power', { outcome: 'not-tested' })).toMatchObject({
      ok: false,
      fault: { code: 'reason-missing' },
    })
    done(await signed(number, 'full-power', { outcome: 'not-tested', reason: 'the dummy load is out for repair' }))
    done(await release(number))
  })

  it('without readings after the work idle stays open, so nothing is released', async () => {
    const { number } = await acceptedJob()
    done(await finishWork(later(25), number))
    await signAll(number, ['idle'])
    expect(await signed(number, 'idle')).toMatchObject({ ok: false, fault: { code: 'idle-not-read' } })
    expect(await release(number)).toMatchObject({ ok: false, fault: { open: ['Idle within the rating'] } })
    done(await signed(number, 'idle', { outcome: 'not-tested', reason: 'no output tubes were here to fit' }))
    done(await release(number))
  })

  it('a tube changed after the signatures calls for them again', async () => {
    const number = await testedJob()
    await signAll(number)
    done(await takeTubeOut(later(45), number, 'V3'))
    done(await fitTube(later(46), number, 'V3'))
    const refused = await release(number)
    expect(refused).toMatchObject({ ok: false, fault: { code: 'release-blocked', open: [], failed: [] } })
    if (!refused.ok)
      expect(stepFaultText(refused.fault, await shopOnFile())).toContain(
        'Soak with a second reading (what sits in a socket was changed since)',
      )
  })

  it('newer readings call for idle to be signed again', async () => {
    const number = await testedJob()
    await signAll(number)
    done(await read(number, { cathodeVolts: 20, step: later(45) }))
    expect(await release(number)).toMatchObject({
      ok: false,
      fault: { outdated: [{ name: 'Idle within the rating' }] },
    })
  })

  it('is a technician’s, and only from testing', async () => {
    const number = await testedJob()
    await signAll(number)
    expect(await release(number, atCounter())).toMatchObject({
      ok: false,
      fault: { code: 'not-your-duty', duty: 'sign-off' },
    })
    const { number: onBench } = await acceptedJob()
    await signAll(onBench, ['idle'])
    done(await signed(onBench, 'idle', { outcome: 'not-tested', reason: 'not asked for' }))
    expect(await release(onBench)).toMatchObject({
      ok: false,
      fault: { code: 'cannot-move', from: 'on-bench', to: 'ready' },
    })
  })
})
