import { expect, test } from 'vitest'
import { type Actor, type Duty, dutyNeeds, mayDo, type Role } from '@/lib/domain/person/role'

const actor = (role: Role, keepsShop: boolean): Actor => ({ id: 'p', name: 'Ada', role, keepsShop })

// The whole table: role, keeps the shop, then what they may do.
test.each<[Role, boolean, Duty[]]>([
  ['counter', false, ['counter-work']],
  ['counter', true, ['counter-work', 'keep-shop']],
  ['technician', false, ['counter-work', 'bench-work', 'sign-off']],
  ['technician', true, ['counter-work', 'bench-work', 'sign-off', 'keep-shop']],
])('%s, keeps the shop %s: %j', (role, keepsShop, duties) => {
  const all: Duty[] = ['counter-work', 'bench-work', 'sign-off', 'keep-shop']
  expect(all.filter((duty) => mayDo(actor(role, keepsShop), duty))).toEqual(duties)
})

test('a refusal names who may', () => {
  expect(dutyNeeds('sign-off')).toContain('technician')
  expect(dutyNeeds('bench-work')).toContain('technician')
  expect(dutyNeeds('keep-shop')).toContain('keeps the shop')
})
