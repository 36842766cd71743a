/** Who may do what. One table, read by every step; a refusal names the role it needs. */
export const ROLES = ['counter', 'technician'] as const
export type Role = (typeof ROLES)[number]

export type Actor = {
  readonly id: string
  readonly name: string
  readonly role: Role
  /** Keeps the shop: settings and people. */
  readonly keepsShop: boolean
}

export type Duty = 'counter-work' | 'bench-work' | 'sign-off' | 'keep-shop'

export function mayDo(actor: Actor, duty: Duty): boolean {
  switch (duty) {
    case 'counter-work':
      return true
    case 'bench-work':
    case 'sign-off':
      return actor.role === 'technician'
    case 'keep-shop':
      return actor.keepsShop
  }
}

export function dutyNeeds(duty: Duty): string {
  switch (duty) {
    case 'counter-work':
      return 'Anyone signed in may do this.'
    case 'bench-work':
      return 'Readings and bench work are entered by a technician. Ask one to sign in.'
    case 'sign-off':
      return 'Safety lines are signed by a technician. Ask one to sign in.'
    case 'keep-shop':
      return 'Settings and people are changed by whoever keeps the shop.'
  }
}
