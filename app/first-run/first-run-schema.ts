import * as z from 'zod/mini'
import { depending, typedText } from '@/app/_components/form/depending'
import { choice, text } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import { newPassPhrase, sameAgain } from '@/app/_components/form/pass-phrase-fields'
import { basicFields } from '@/app/settings/shop-fields'
import { ROLES } from '@/lib/domain/person/role'

export const firstRunSchema = z.object({
  person: depending((typed) =>
    z.object({
      name: text({ label: 'Your name', required: true, max: 120 }),
      signInName: text({ label: 'Sign-in name', required: true, max: 60 }),
      role: choice('Your work', ROLES),
      passPhrase: newPassPhrase('The pass phrase'),
      passPhraseAgain: sameAgain('The second pass phrase', typedText(typed, 'passPhrase')),
    }),
  ),
  shop: depending((typed) => z.object(basicFields(typed))),
})

export const firstRunValues = (timeZone: string): FormValues => ({
  'person.name': '',
  'person.signInName': '',
  'person.role': 'technician',
  'shop.name': '',
  'shop.currency': '',
  'shop.hourlyRate': '',
  'shop.taxName': '',
  'shop.taxMilliPercent': '',
  'shop.mainsVolts': '',
  'shop.timeZone': timeZone,
  'shop.paper': '',
  'shop.words': '',
})
