import { capital, type Words } from '@/lib/domain/words'
import type { ChassisWords } from './chassis-view'

export const chassisWords = (words: Words): ChassisWords => ({
  tube: capital(words.tube),
  front: 'controls',
  rear: 'rear',
  mainsTransformer: words.mains === 'line' ? 'power transformer' : 'mains transformer',
  outputTransformer: 'output transformer',
})
