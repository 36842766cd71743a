import { describe, expect, it } from 'vitest'
import { money } from '@/lib/domain/money'
import { listHistoryOf } from '@/lib/store/history'
import { listOperations } from '@/lib/store/operation'
import { keepOperation, type Move, moveOperation, type OperationInput } from '@/lib/workflow/shop/keep-operation'
import { freshDatabase } from '@/tests/support/fresh-database'
import { keeping } from '@/tests/support/keeper'
import { atBench } from '@/tests/support/person-at-work'
import { openStockedShop } from '@/tests/support/stocked-shop'

freshDatabase()
await openStockedShop()

const hourly = (name: string): OperationInput['details'] => ({ name, milliHours: 750, flatPrice: null, active: true })

async function onFile(name: string): Promise<string> {
  const kept = await keepOperation(keeping(), { id: null, details: hourly(name) })
  if (!kept.ok) throw new Error(kept.fault.code)
  return kept.value
}

const names = async () => (await listOperations()).map(({ name }) => name)
const ids: Record<string, string> = {}
for (const name of ['one', 'two', 'three', 'four']) ids[name] = await onFile(name)
const move = (name: string, way: Move) => moveOperation(keeping(), { id: ids[name] ?? '', move: way })

describe('the list of operations', () => {
  it('grows at its end', async () => expect(await names()).toEqual(['one', 'two', 'three', 'four']))

  it('is put in order one place at a time, and ends are ends', async () => {
    await move('three', 'up')
    expect(await names()).toEqual(['one', 'three', 'two', 'four'])
    await move('one', 'up')
    await move('four', 'down')
    expect(await names()).toEqual(['one', 'three', 'two', 'four'])
    await move('one', 'down')
    expect(await names()).toEqual(['three', 'one', 'two', 'four'])
  })

  it('steps over what is retired', async () => {
    await keepOperation(keeping(), { id: ids.one ?? '', details: { ...hourly('one'), active: false } })
    expect(await names()).toEqual(['three', 'two', 'four'])
    await move('two', 'up')
    expect(await names()).toEqual(['two', 'three', 'four'])
    expect((await listOperations(true)).map(({ name }) => name)).toContain('one')
  })

  it('is changed by whoever keeps the shop alone', async () => {
    const duty = { ok: false, fault: { code: 'not-your-duty', duty: 'keep-shop' } }
    expect(await keepOperation(atBench(), { id: null, details: hourly('five') })).toEqual(duty)
    expect(await moveOperation(atBench(), { id: ids.four ?? '', move: 'up' })).toEqual(duty)
    expect(await names()).toEqual(['two', 'three', 'four'])
  })
})

describe('one operation', () => {
  it('goes from the hour to a flat price, and the history says so', async () => {
    const id = ids.four ?? ''
    const details = { name: 'four', milliHours: null, flatPrice: money(4550), active: true }
    expect(await keepOperation(keeping(), { id, details })).toEqual({ ok: true, value: id })
    const [entry] = await listHistoryOf('operation', id)
    expect(entry).toMatchObject({ did: 'Operation corrected', person: 'Ada' })
    expect(entry?.changes).toEqual([{ label: 'Charged', from: '0.75 h', to: '$45.50' }])
  })

  it('that is not there is told', async () => {
    expect(await keepOperation(keeping(), { id: 'none', details: hourly('x') })).toMatchObject({
      fault: { code: 'not-found' },
    })
    expect(await moveOperation(keeping(), { id: 'none', move: 'up' })).toMatchObject({ fault: { code: 'not-found' } })
  })
})
