import { describe, expect, it } from 'vitest'
import { readValues } from '@/app/_components/form/read-form'
import { answerSchema, answerToKeep, answerValues } from '@/app/jobs/[jobNumber]/quote/answer-schema'

const schema = answerSchema({ currency: 'USD', digits: 2 })
const start = {
  version: 3,
  customerName: 'Mirela Thorn',
  phone: '207-555-0177',
  now: new Date('2031-05-06T01:05:00Z'),
  zone: 'America/New_York',
}
const form = (over: Readonly<Record<string, string>> = {}) => ({ ...answerValues(start), answer: 'accepted', ...over })
const faultsOf = (over: Readonly<Record<string, string>>) => {
  const read = readValues(schema, form(over))
  return read.ok ? {} : read.faults
}

describe('the answer’s form', () => {
  it('starts from the customer, the number on file, and the shop’s day and hour', () => {
    expect(form()).toMatchObject({
      by: 'Mirela Thorn',
      way: 'by phone',
      detail: '207-555-0177',
      on: '2031-05-05',
      at: '21:05',
    })
    expect(answerValues({ ...start, phone: '' }).way).toBe('in person')
  })

  it('needs the number that was called, and how a deposit was paid', () => {
    expect(faultsOf({ detail: '' })).toEqual({
      detail: 'Number or address is empty. A yes by phone needs the number that was called.',
    })
    expect(faultsOf({ detail: '', way: 'in person' })).toEqual({})
    expect(faultsOf({ deposit: '50' })).toEqual({
      depositHow: 'Deposit by: nothing is chosen. Choose how it was paid.',
    })
    expect(faultsOf({ deposit: '50', depositHow: 'cash' })).toEqual({})
  })

  it('“half past” is no time', () => {
    expect(faultsOf({ at: '9h30' })).toEqual({ at: 'At: “9h30” is no time. Write it like 14:30.' })
  })

  it('an empty deposit, or none, is no payment; a no carries neither deposit nor move', () => {
    const keep = (over: Readonly<Record<string, string>>, answer: 'accepted' | 'declined') => {
      const read = readValues(schema, form(over))
      if (!read.ok) throw new Error(JSON.stringify(read.faults))
      return answerToKeep('1001-7', { ...read.value, answer }, start.now)
    }
    expect(keep({}, 'accepted')).toMatchObject({ answer: 'accepted', deposit: null, moveTo: 'on-bench' })
    expect(keep({ deposit: '0' }, 'accepted')).toMatchObject({ deposit: null })
    expect(keep({ deposit: '50,5', depositHow: 'card' }, 'accepted')).toMatchObject({
      deposit: { amount: 5050, how: 'card' },
    })
    expect(Object.keys(keep({ deposit: '50', depositHow: 'card' }, 'declined')).sort()).toEqual([
      'answer',
      'at',
      'by',
      'detail',
      'jobNumber',
      'version',
      'way',
    ])
  })
})
