/**
 * The band of new tubes where nobody read the grid volts: drawn amplifiers are read, their
 * grid volts implied, and other drawn tubes put in. The draws follow the spread of a type
 * (individual-tube.ts) and know nothing of slopes or bands (JCGM 101:2008, propagation by
 * Monte Carlo). The curves themselves are not drawn, so the band may cover a little more
 * than its 95 %, never less beyond the scatter of 200 draws.
 */
import { expect, test } from 'vitest'
import { whatIf } from '@/lib/domain/circuit/change/what-if'
import { scaledTube } from '@/lib/domain/model/tube-scales'
import { circuitOf, curvesOf, trueStage } from '../amp/read-amp'
import { dice } from '../random-stage'
import { given, solved } from '../solved'

const AMPS = 100

test(`${2 * AMPS} foretold currents of drawn tubes: 93 to 100 % lie in their 95 % band, which is not padded`, () => {
  const roll = dice(7)
  const normal = () => Math.sqrt(-2 * Math.log(1 - roll())) * Math.cos(2 * Math.PI * roll())
  const average = curvesOf('6L6')
  const drawn = () => scaledTube(average, [0.1 * normal(), 0.03 * normal(), 0.35 * normal()])
  const withDrawn = (stage = trueStage()) => ({
    ...stage,
    tubes: stage.tubes.map((one) => ({ ...one, tube: drawn() })),
  })
  const misses = Array.from({ length: AMPS }, () => {
    const stage = withDrawn()
    const change = { tubes: { all: { kind: 'type', designation: '6L6GC' } } } as const
    const { sockets } = given(whatIf(circuitOf(stage), change))
    const truth = solved(withDrawn(stage)).tubes
    return sockets.map(({ changed }, i) => {
      const { value, high } = changed?.plateAmps ?? { value: 1, high: 1 }
      return Math.log((truth[i]?.plateCurrent ?? 0) / value) / (Math.log(high / value) / 2)
    })
  }).flat()
  const inside = misses.filter((miss) => Math.abs(miss) <= 2).length / misses.length
  const spread = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length)
  expect(inside).toBeGreaterThan(0.93)
  expect(spread).toBeGreaterThan(0.75)
  expect(spread).toBeLessThan(1.1)
})
