import * as z from 'zod/mini'
import { depending, typedText } from '@/app/_components/form/depending'
import { choice, flag, text } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import { newPassPhrase, sameAgain } from '@/app/_components/form/pass-phrase-fields'
import { ROLES } from '@/lib/domain/person/role'
import type { Person } from '@/lib/store/person'

const personFields = {
  name: text({ label: 'Name', required: true, max: 120 }),
  role: choice('Work', ROLES),
  keepsShop: flag(),
}

export const personSchema = z.object({ id: text({ label: 'Person', required: true }), ...personFields, active: flag() })

export const personValues = ({ id, name, role, keepsShop, active }: Person): FormValues => ({
  id,
  name,
  role,
  keepsShop: keepsShop ? 'on' : '',
  active: active ? 'on' : '',
})

export const newPersonSchema = depending((typed) =>
  z.object({
    ...personFields,
    signInName: text({ label: 'Sign-in name', required: true, max: 60 }),
    passPhrase: newPassPhrase('The pass phrase'),
    passPhraseAgain: sameAgain('The second pass phrase', typedText(typed, 'passPhrase')),
  }),
)

export const newPersonValues: FormValues = { name: '', role: 'technician', signInName: '', keepsShop: '' }

export const givenPassPhraseSchema = depending((typed) =>
  z.object({
    id: text({ label: 'Person', required: true }),
    passPhrase: newPassPhrase('The pass phrase'),
    passPhraseAgain: sameAgain('The second pass phrase', typedText(typed, 'passPhrase')),
  }),
)
