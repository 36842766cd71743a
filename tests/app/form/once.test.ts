import { describe, expect, test, vi } from 'vitest'
import { type FormState, freshForm, refusedForm, savedForm } from '@/app/_components/form/form-state'
import { once, onceMark } from '@/app/_components/form/once'

function sheet(boxes: Readonly<Record<string, string>>): FormData {
  const form = new FormData()
  for (const [name, value] of Object.entries(boxes)) form.set(name, value)
  return form
}
const before = freshForm({})
const saves = () => vi.fn(async (): Promise<FormState> => savedForm(before, {}, 'saved'))

describe('a sheet sent twice', () => {
  test('both at once and once later: written once, and all get the same answer', async () => {
    const [mark, work] = [onceMark(), saves()]
    const send = () => once('tess', sheet({ once: mark, name: 'A' }), work)
    const [first, second] = await Promise.all([send(), send()])
    expect(await send()).toBe(first)
    expect(second).toBe(first)
    expect(work).toHaveBeenCalledTimes(1)
  })

  test('one box changed, another mark or another person: each is a sheet of its own', async () => {
    const [mark, work] = [onceMark(), saves()]
    await once('tess', sheet({ once: mark, name: 'A' }), work)
    await once('tess', sheet({ once: mark, name: 'B' }), work)
    await once('tess', sheet({ once: onceMark(), name: 'A' }), work)
    await once('milo', sheet({ once: mark, name: 'A' }), work)
    expect(work).toHaveBeenCalledTimes(4)
  })

  test('refused, or failed on the way, it may be sent again', async () => {
    const form = sheet({ once: onceMark(), name: 'A' })
    await once('tess', form, async () => refusedForm(before, {}, 'no'))
    await expect(once('tess', form, () => Promise.reject(new Error('disk full')))).rejects.toThrow('disk full')
    const work = saves()
    await once('tess', form, work)
    expect(work).toHaveBeenCalledTimes(1)
  })

  test('saved and led to another page, the second is led there too', async () => {
    const form = sheet({ once: onceMark(), name: 'A' })
    const leadsOn = Object.assign(new Error('redirect'), { digest: 'NEXT_REDIRECT;push;/jobs/1031-4;303;' })
    await expect(once('tess', form, () => Promise.reject(leadsOn))).rejects.toBe(leadsOn)
    const work = saves()
    await expect(once('tess', form, work)).rejects.toBe(leadsOn)
    expect(work).not.toHaveBeenCalled()
  })

  test('without a mark every sheet is written', async () => {
    const work = saves()
    await once('tess', sheet({ name: 'A' }), work)
    await once('tess', sheet({ name: 'A' }), work)
    expect(work).toHaveBeenCalledTimes(2)
  })
})
