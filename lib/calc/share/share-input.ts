/** What `calc share` takes: jobs with the sets they want, tubes with their readings, and the limits of a set. */
import { z } from 'zod'
import { gridVolts, name, voltsFromZero } from '@/lib/calc/input/quantities'
import { wordSet } from '@/lib/calc/input/word-set'

export const testPlace = z
  .strictObject({
    instrument: name('Tubes read on different instruments are put together only by corrections.'),
    plateVolts: voltsFromZero('Set at the test.'),
    screenVolts: voltsFromZero('Set at the test. Left out: no screen.').optional(),
    gridVolts: gridVolts('Set at the test.'),
  })
  .describe('Where a tube was read.')

export const stockedTube = z.strictObject({
  mark: name('Of this one tube.'),
  type: name('As printed on it.'),
  milliamps: z.number().gt(0).max(2000).describe('Plate current read.'),
  milliampsPerVolt: z.number().gt(0).max(200).optional().describe('Transconductance read. Left out: not read.'),
  price: z.number().min(0).max(1_000_000).default(0).describe('In whatever money; to the hundredth.'),
  heldFor: name('Name of the job it is held for: free for that job alone.').optional(),
  test: testPlace.optional(),
})

export const wantedSet = z.strictObject({
  type: name('As it stands in the sockets: any tube of its family and base will do.'),
  count: z.int().min(1).max(8),
  group: name('Which sockets.').default('output'),
  pushPull: z.boolean().default(true),
  plateToCathodeVolts: voltsFromZero('As measured. Left out: not measured.').optional(),
  screenToCathodeVolts: voltsFromZero('As measured. Left out: not measured, or no screen.').optional(),
  idleWatts: z.number().min(0).max(1000).optional().describe('Plate dissipation of one tube at idle.'),
})

export const setLimits = z
  .strictObject({
    milliamps: z.number().min(0.1).max(50).default(5).describe('Highest less lowest plate current of a set.'),
    percent: z.number().min(0.5).max(100).default(10).describe('Highest over lowest transconductance, less one.'),
    setPrice: z.number().min(0).max(1_000_000).optional().describe('For a set at most. Left out: no limit.'),
    allowOverPrintedRating: z.boolean().default(false),
    oneDesignation: z.boolean().default(false).describe('No variants mixed in a set.'),
  })
  .default({ milliamps: 5, percent: 10, allowOverPrintedRating: false, oneDesignation: false })

const carriedRate = z.strictObject({
  times: z.number().gt(0.1).lt(10).describe('A reading on the first is this many times as much on the second.'),
  percent: z.number().gt(0).max(100).describe('Half of the 95 % band of one reading carried over.'),
})

export const testerCorrections = z
  .array(
    z.strictObject({
      from: name('Instrument.'),
      to: name('Another instrument.'),
      plateCurrent: carriedRate,
      transconductance: carriedRate
        .optional()
        .describe('Left out: tubes whose transconductance was read are not carried over.'),
    }),
  )
  .max(100)
  .default([])
  .describe('Between instruments, by tubes read on both; good in both directions.')

export const compareOn = name(
  'Instrument that readings are carried over to. Left out: the one most were read on.',
).optional()

export const shareInput = z.strictObject({
  jobs: z
    .array(z.strictObject({ job: name('Its number or name.'), sets: z.array(wantedSet).min(1).max(8) }))
    .min(1)
    .max(200)
    .describe('In the order they would be served first come, first served.'),
  test: testPlace.describe('Where the tubes were read that say nothing else.'),
  stock: z.array(stockedTube).max(20_000),
  limits: setLimits,
  corrections: testerCorrections,
  compareOn,
  seconds: z.number().min(1).max(600).default(30).describe('Time to compute in; the gap that is left is told.'),
  words: wordSet,
})

export type ShareGiven = z.output<typeof shareInput>
