/** People of a test shop, and the instant they act at. */
import type { Actor, Role } from '@/lib/domain/person/role'
import type { Step } from '@/lib/workflow/step/step'

const person = (name: string, role: Role): Actor => ({ id: name.toLowerCase(), name, role, keepsShop: false })

export const NOW = new Date('2031-05-06T09:30:00Z')

export const atBench = (name = 'Ines', now = NOW): Step => ({ actor: person(name, 'technician'), now })
export const atCounter = (name = 'Odo', now = NOW): Step => ({ actor: person(name, 'counter'), now })
