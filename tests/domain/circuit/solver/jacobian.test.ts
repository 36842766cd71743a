import { expect, test } from 'vitest'
import { fillJacobian } from '@/lib/domain/circuit/solver/jacobian'
import { placeNodes } from '@/lib/domain/circuit/solver/node-voltages'
import { layWires, MOST_UNKNOWNS, newWiring } from '@/lib/domain/circuit/solver/wiring'
import { usualStage } from '../random-stage'
import { solved } from '../solved'

/**
 * Five-point differences of the misfits about the operating point. A step of 1e-4 of the
 * current leaves a truncation of about 1e-12 and rounding of about 1e-10 of a slope.
 */
test('every slope of the misfits is what differences give, to 1e-6, on 60 random stages', () => {
  const wiring = newWiring()
  const jacobian = new Float64Array(MOST_UNKNOWNS * MOST_UNKNOWNS)
  for (let seed = 1; seed <= 60; seed++) {
    const stage = usualStage(seed)
    const { tubes } = solved(stage)
    layWires(wiring, stage)
    const x = new Float64Array(MOST_UNKNOWNS)
    x.set(tubes.flatMap(({ plateCurrent, screenCurrent }) => [plateCurrent, screenCurrent]))
    placeNodes(wiring, x, 1)
    fillJacobian(wiring, 1, jacobian, MOST_UNKNOWNS)
    for (let column = 0; column < 2 * wiring.count; column++) {
      const step = 1e-4 * Math.max(x[column] ?? 0, 1e-4)
      const misfitsAt = (steps: number) => {
        const moved = x.slice()
        moved[column] = (moved[column] ?? 0) + steps * step
        placeNodes(wiring, moved, 1)
        return wiring.misfit.slice()
      }
      const [a, b, c, d] = [misfitsAt(-2), misfitsAt(-1), misfitsAt(1), misfitsAt(2)]
      for (let row = 0; row < 2 * wiring.count; row++) {
        const difference = ((a[row] ?? 0) - 8 * (b[row] ?? 0) + 8 * (c[row] ?? 0) - (d[row] ?? 0)) / (12 * step)
        const analytic = jacobian[row * MOST_UNKNOWNS + column] ?? Number.NaN
        expect(Math.abs(analytic - difference)).toBeLessThan(1e-6 * (1 + Math.abs(analytic)))
      }
    }
  }
})
