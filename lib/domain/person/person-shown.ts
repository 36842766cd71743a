import { type Shown, shown } from '@/lib/domain/history/changes'
import type { Role } from './role'

export type PersonDetails = {
  readonly name: string
  readonly role: Role
  readonly keepsShop: boolean
  /** False once somebody has left: no sign-in, the name stays on what was signed. */
  readonly active: boolean
}

const yesNo = (yes: boolean): string => (yes ? 'yes' : 'no')

export const personShown = (person: PersonDetails): Shown =>
  shown([
    ['Name', person.name],
    ['Role', person.role],
    ['Keeps the shop', yesNo(person.keepsShop)],
    ['May sign in', yesNo(person.active)],
  ])
