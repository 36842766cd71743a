/** `calc tube`: what the handbook knows of a designation. */
import { z } from 'zod'
import { calculator } from '@/lib/calc/calculator'
import { knownTube } from '@/lib/calc/input/known-tube'
import { name } from '@/lib/calc/input/quantities'
import { ok } from '@/lib/domain/result'
import { listDesignationsByRole } from '@/lib/domain/tube/list-designations'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { tubeCard } from './tube-card'

const input = z.strictObject({
  designation: name('As written on the tube or in a list: "6L6GC", "EL34/6CA7", "CV511".'),
})

export const tube = calculator({
  title: 'What the handbook knows of a tube type',
  input,
  example: { designation: '6V6GTA' },
  calculate: ({ designation }) => {
    const found = knownTube(designation, 'designation')
    return found.ok ? ok(tubeCard(found.value)) : found
  },
})

/** Numbers of the same tube and similar types are on each card. */
export const tubeList = (): object =>
  Object.fromEntries(listDesignationsByRole(HANDBOOK_ONLY).map(({ role, designations }) => [role, designations]))
