/** Idle of a proposed tube at electrode voltages that are known. */

import { type Faults, together } from '@/lib/calc/calculator'
import { figure } from '@/lib/calc/output/figure'
import { predictedIdle } from '@/lib/domain/model/predicted-idle'
import { ok, type Result } from '@/lib/domain/result'
import { wordsFor } from '@/lib/domain/words'
import { curveCautions, pointCautions, READ_IT } from './predict-cautions'
import type { AtVoltages } from './predict-input'
import { powersAt, predictedFigures } from './predicted-figures'
import { proposedTube, testPoint, tubeReport } from './proposed-tube'

const onlyOne = <T>(values: readonly T[]): T => values[0] as T

export function predictAtVoltages(given: AtVoltages): Result<object, Faults> {
  const proposed = together([proposedTube(given.tube, 'tube')])
  if (!proposed.ok) return proposed
  const { variant, tube } = onlyOne(proposed.value)
  const points = together([testPoint(given.at, tube.type, 'at')])
  if (!points.ok) return points
  const point = onlyOne(points.value)
  const words = wordsFor(given.words)
  const idle = predictedIdle(tube, point)
  const screen = tube.parameters.kind === 'pentode' ? idle.screen : null
  const powers = powersAt(idle.plate, screen, point.plateToCathode, point.screenToCathode)
  return ok({
    tube: tubeReport({ variant, tube }),
    ...predictedFigures(idle.plate, screen, powers, variant),
    standardPercent: {
      ofCurves: figure(100 * idle.curveShare, 2),
      ofTube: figure(100 * idle.tubeShare, 2),
      together: figure(100 * idle.plate.share, 2),
    },
    cautions: [
      ...curveCautions({ variant, tube }, idle, words),
      ...pointCautions(point.plateToCathode, point.gridToCathode, words),
      READ_IT,
    ],
  })
}
