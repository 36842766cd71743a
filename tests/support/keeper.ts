/** Who keeps the test shop, as the steps see them. */
import type { Actor } from '@/lib/domain/person/role'
import type { Step } from '@/lib/workflow/step/step'
import { NOW } from './person-at-work'

export const keeping = (actor: Partial<Actor> = {}, now = NOW): Step => ({
  actor: { id: 'ada', name: 'Ada', role: 'counter', keepsShop: true, ...actor },
  now,
})
