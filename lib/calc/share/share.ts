/** `calc share`: which job gets which tubes, how far that is proved, and what to buy. */
import { calculator, type Faults, faultsOf, together } from '@/lib/calc/calculator'
import type { InputFault } from '@/lib/calc/input/input-fault'
import { knownTube } from '@/lib/calc/input/known-tube'
import { fail, ok, type Result } from '@/lib/domain/result'
import { shareAtOnce } from '@/lib/planning/sharing/share-at-once'
import { type ShareGiven, shareInput } from './share-input'
import { shareOrder } from './share-order'
import { shareReport } from './share-report'

function calculate(given: ShareGiven): Result<object, Faults> {
  const faults = [
    ...twice(
      given.stock.map(({ mark }) => mark),
      'stock',
      'mark',
    ),
    ...twice(
      given.jobs.map(({ job }) => job),
      'jobs',
      'job',
    ),
  ]
  if (faults.length > 0) return fail(faultsOf(faults))
  const known = together([
    ...given.stock.map(({ type }, at) => knownTube(type, `stock[${at}].type`)),
    ...given.jobs.flatMap(({ sets }, job) =>
      sets.map(({ type }, at) => knownTube(type, `jobs[${job}].sets[${at}].type`)),
    ),
  ])
  return known.ok ? ok(shareReport(shareAtOnce(shareOrder(given)), given)) : known
}

export function twice(names: readonly string[], list: string, key: string): InputFault[] {
  return names.flatMap((name, at) =>
    names.indexOf(name) < at
      ? [
          {
            code: `${key}-twice`,
            path: `${list}[${at}].${key}`,
            sentence: `${name} stands twice in ${list}. Each needs a ${key} of its own.`,
          },
        ]
      : [],
  )
}

export const share = calculator({
  title: 'A stock shared over jobs',
  input: shareInput,
  example: {
    jobs: [
      { job: 'Foreman 40', sets: [{ type: '6L6GC', count: 2, plateToCathodeVolts: 430, idleWatts: 18 }] },
      { job: 'Millstone 100', sets: [{ type: '6L6GC', count: 4 }] },
    ],
    test: { instrument: 'Tester 1', plateVolts: 250, screenVolts: 250, gridVolts: -14 },
    stock: [
      { mark: 'T-1', type: '6L6GC', milliamps: 70.1, milliampsPerVolt: 5.9, price: 46 },
      { mark: 'T-2', type: '6L6GC', milliamps: 70.4, milliampsPerVolt: 5.95 },
      { mark: 'T-3', type: '6L6GC', milliamps: 71.2, milliampsPerVolt: 6 },
      { mark: 'T-4', type: '5881', milliamps: 72, milliampsPerVolt: 6.05 },
      { mark: 'T-5', type: '6L6GC', milliamps: 80, milliampsPerVolt: 6.4 },
      { mark: 'T-6', type: '6L6GC', milliamps: 83, milliampsPerVolt: 6.5 },
    ],
  },
  calculate,
})
