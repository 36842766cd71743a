import * as z from 'zod/mini'
import { text, version } from '@/app/_components/form/fields'

export const copySchema = z.object({
  ampId: text({ label: 'Amplifier', required: true }),
  fromAmpId: text({ label: 'Amplifier to copy from', required: true }),
  version: version(),
})
