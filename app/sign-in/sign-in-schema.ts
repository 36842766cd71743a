import * as z from 'zod/mini'
import { text } from '@/app/_components/form/fields'

export const signInSchema = z.object({
  signInName: text({ label: 'Sign-in name', required: true, max: 60 }),
  back: text({ label: 'Page', max: 300 }),
  passPhrase: text({ label: 'Pass phrase', required: true, max: 200 }),
})
