/** `calc identify`: what a bottle can be, why, and the one thing to look at next. */
import { calculator } from '@/lib/calc/calculator'
import { identify as identifyBottle } from '@/lib/domain/identify/identify'
import { ok } from '@/lib/domain/result'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { wordsFor } from '@/lib/domain/words'
import { identifyInput } from './identify-input'
import { identifyReport } from './identify-report'

export const identify = calculator({
  title: 'What a bottle can be, from what is seen of it',
  input: identifyInput,
  example: { print: '6V6GT', date: '188-5-32', choices: { bulb: 'metal', base: 'octal', baseMaterial: 'black' } },
  calculate: ({ words, makers, thisYear, ...told }) => {
    const found = identifyBottle({ ...told, other: '' }, { makers, thisYear, catalogue: HANDBOOK_ONLY })
    return ok(identifyReport(found, wordsFor(words)))
  },
})
