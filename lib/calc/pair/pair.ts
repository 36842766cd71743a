/** `calc pair`: a whole stock paired up at the least spread there is, with the proof that there is none less. */
import { z } from 'zod'
import { calculator, type Faults, faultsOf } from '@/lib/calc/calculator'
import { name } from '@/lib/calc/input/quantities'
import { figure } from '@/lib/calc/output/figure'
import { twice } from '@/lib/calc/share/share'
import { pairTubes, type TubePairs } from '@/lib/domain/pairing/pair-tubes'
import { type ReadTube, USUAL_SPREAD_RULE, YARDSTICK_STEPS } from '@/lib/domain/pairing/spread-rule'
import { fail, ok, type Result } from '@/lib/domain/result'
import { amps, ratio, siemens } from '@/lib/domain/units'

const input = z.strictObject({
  tubes: z
    .array(
      z.strictObject({
        mark: name('Of this one tube.'),
        milliamps: z.number().gt(0).max(2000).describe('Plate current read.'),
        milliampsPerVolt: z.number().gt(0).max(200).optional().describe('Transconductance: of all tubes or of none.'),
      }),
    )
    .max(20_000)
    .describe('Of one type, read on one instrument at one test point.'),
  yardsticks: z
    .strictObject({
      milliamps: z.number().min(0.1).max(50).default(5).describe('No pair lies further apart in plate current.'),
      percent: z.number().min(0.5).max(100).default(10).describe('Nor in transconductance.'),
    })
    .default({ milliamps: 5, percent: 10 }),
  mostPairs: z
    .boolean()
    .default(false)
    .describe('As many pairs as can be, whatever they spread within the yardsticks.'),
})

type Given = z.output<typeof input>

const inYardsticks = (steps: number): number => figure(steps / YARDSTICK_STEPS)

function report({ pairs, singles, totalSpread, proof }: TubePairs<ReadTube>): object {
  return {
    pairs: pairs.map(({ tubes, spread }) => ({
      marks: tubes.map(({ mark }) => mark),
      yardsticks: inYardsticks(spread),
    })),
    singles: singles.map(({ mark }) => mark),
    totalYardsticks: inYardsticks(totalSpread),
    proof: {
      ...proof,
      inWords: 'No other way of pairing these tubes costs less: checked over all pairs by the dual certificate.',
    },
  }
}

function calculate({ tubes, yardsticks, mostPairs }: Given): Result<object, Faults> {
  const again = twice(
    tubes.map(({ mark }) => mark),
    'tubes',
    'mark',
  )
  if (again.length > 0) return fail(faultsOf(again))
  const rule = {
    ...USUAL_SPREAD_RULE,
    yardsticks: { plateCurrent: amps(yardsticks.milliamps / 1000), transconductance: ratio(yardsticks.percent / 100) },
    singleCost: mostPairs ? ('most-sets' as const) : USUAL_SPREAD_RULE.singleCost,
  }
  const read = tubes.map(({ mark, milliamps, milliampsPerVolt }) => ({
    mark,
    plateCurrent: amps(milliamps / 1000),
    transconductance: milliampsPerVolt === undefined ? null : siemens(milliampsPerVolt / 1000),
  }))
  const paired = pairTubes(read, rule)
  if (paired.ok) return ok(report(paired.value))
  const sentence =
    'tubes cannot be compared with each other: give the transconductance of all or of none, and each mark once.'
  return fail([{ code: paired.fault.kind, path: 'tubes', sentence }])
}

export const pair = calculator({
  title: 'A stock paired up',
  input,
  example: {
    tubes: [
      { mark: 'T-1', milliamps: 70.1, milliampsPerVolt: 5.9 },
      { mark: 'T-2', milliamps: 71, milliampsPerVolt: 5.95 },
      { mark: 'T-3', milliamps: 72, milliampsPerVolt: 6 },
      { mark: 'T-4', milliamps: 73, milliampsPerVolt: 6.05 },
      { mark: 'T-5', milliamps: 90, milliampsPerVolt: 7.2 },
    ],
  },
  calculate,
})
