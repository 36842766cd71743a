import * as z from 'zod/mini'
import { depending, typedText } from '@/app/_components/form/depending'
import { text } from '@/app/_components/form/fields'
import { newPassPhrase, sameAgain } from '@/app/_components/form/pass-phrase-fields'

export const passPhraseSchema = depending((typed) =>
  z.object({
    present: text({ label: 'Present pass phrase', required: true }),
    next: newPassPhrase('The new pass phrase'),
    nextAgain: sameAgain('The second new pass phrase', typedText(typed, 'next')),
  }),
)
