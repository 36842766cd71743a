/** Who works in the demo shop. The pass phrases are no secret: they stand in the greeting. */
import type { Role } from '@/lib/domain/person/role'

export type DemoPerson = {
  readonly name: string
  readonly signInName: string
  readonly passPhrase: string
  readonly role: Role
}

export type Who = 'tess' | 'milo' | 'anselm'

export const DEMO_PEOPLE: Readonly<Record<Who, DemoPerson>> = {
  /** Keeps the shop. */
  tess: { name: 'Tess Varnholt', signInName: 'tess', passPhrase: 'copper kettle lamp', role: 'technician' },
  milo: { name: 'Milo Ashdeane', signInName: 'milo', passPhrase: 'paper tape counter', role: 'counter' },
  anselm: { name: 'Anselm Okwuosa', signInName: 'anselm', passPhrase: 'green baize drawer', role: 'technician' },
}

/** What `npm start` shows: one line a person, role, sign-in name and pass phrase. */
export function signInText(shopName: string): string {
  const lines = Object.values(DEMO_PEOPLE).map(
    ({ role, signInName, passPhrase }) => `  ${role.padEnd(10)}  ${signInName} / ${passPhrase}`,
  )
  return [`Demo shop, all of it made up: ${shopName}. Sign in as`, ...lines, ''].join('\n')
}
