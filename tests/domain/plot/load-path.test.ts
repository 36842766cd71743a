import { describe, expect, test } from 'vitest'
import { clippingEstimate } from '@/lib/domain/circuit/checks/load-line'
import { FITTED_CURVES } from '@/lib/domain/model/fitted-parameters'
import { tubeCurrents } from '@/lib/domain/model/plate-curves'
import { loadPath, type PlotLoad } from '@/lib/domain/plot/load-path'
import { amps, ohms, volts } from '@/lib/domain/units'

const tube = FITTED_CURVES['6L6']?.parameters
if (!tube) throw new Error('No curves of the 6L6')
const zeroGrid = (plate: number) => 1000 * tubeCurrents(tube, plate, 391, 0).plate
const idle = { across: 425, up: 35 }
const load: PlotLoad = { ohms: 4200, arrangement: 'push-pull', tubesPerSide: 1 }

function path(given: Partial<PlotLoad> = {}, at = idle) {
  const found = loadPath(at, { ...load, ...given }, zeroGrid)
  if (!found) throw new Error('No path')
  return found.points
}

describe('load line through the idle point', () => {
  test('4200 Ω, 35 mA at 425 V: no current left at 425 + 0.035·2100 = 498.5 V, the bend at 351.5 V and 70 mA', () => {
    const points = path()
    expect(points).toContainEqual(idle)
    expect(points.at(-1)?.across).toBeCloseTo(498.5, 6)
    expect(points.at(-1)?.up).toBe(0)
    const bend = points.at(-3)
    expect(bend?.across).toBeCloseTo(351.5, 6)
    expect(bend?.up).toBeCloseTo(70, 6)
  })

  test('beyond the bend it is the class-B line: it ends where the clipping estimate ends, to 1e-6', () => {
    const { clipping } = clippingEstimate({
      tube,
      tubesPerSide: 1,
      plate: volts(425),
      screen: volts(391),
      plateCurrent: amps(0.035),
      load: ohms(4200),
      arrangement: 'push-pull',
    })
    const [end] = path()
    expect(end?.across).toBeCloseTo(clipping.plate, 6)
    expect(end?.up).toBeCloseTo(1000 * clipping.current, 6)
  })

  test('two tubes in parallel on each side see twice the load: the path of 4200 Ω with two is that of 8400 Ω with one', () => {
    expect(path({ tubesPerSide: 2 })).toEqual(path({ ohms: 8400 }))
  })

  test('single-ended, 2500 Ω, 72 mA at 250 V: one straight line to 250 + 0.072·2500 = 430 V', () => {
    const points = path({ ohms: 2500, arrangement: 'single-ended' }, { across: 250, up: 72 })
    expect(points).toHaveLength(3)
    expect(points.at(-1)?.across).toBeCloseTo(430, 6)
    const [end] = points
    expect(end?.up).toBeCloseTo(72 + (1000 * (250 - (end?.across ?? 0))) / 2500, 6)
  })

  test('so much idle current that both sides always conduct: no bend, the line ends before it', () => {
    expect(path({ ohms: 12_000 }, { across: 250, up: 80 })).toHaveLength(3)
  })

  test('a point above the curve at zero grid volts has no path', () => {
    expect(loadPath({ across: 20, up: 400 }, load, zeroGrid)).toBeNull()
  })

  test('law: it falls all the way, and no point is above the curve at zero grid volts', () => {
    for (const ohmsOf of [1500, 4200, 8000, 20_000]) {
      const points = path({ ohms: ohmsOf })
      expect(points.every(({ across }, i) => i === 0 || across > (points[i - 1]?.across ?? 0))).toBe(true)
      expect(points.every(({ up }, i) => i === 0 || up < (points[i - 1]?.up ?? 0))).toBe(true)
      expect(points.every(({ across, up }) => up <= zeroGrid(across) + 1e-6)).toBe(true)
    }
  })
})
