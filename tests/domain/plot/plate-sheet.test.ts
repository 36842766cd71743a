import { describe, expect, test } from 'vitest'
import { FITTED_CURVES } from '@/lib/domain/model/fitted-parameters'
import { tubeCurrents } from '@/lib/domain/model/plate-curves'
import { inFrame, type PlotPoint } from '@/lib/domain/plot/frame'
import { heatLimit } from '@/lib/domain/plot/heat-limit'
import { type PlateSheet, type PlotView, plateSheet } from '@/lib/domain/plot/plate-sheet'
import { MANY, plotInput, plotReading, sheet } from './plot-fixture'

const views = ({ whole, glass }: PlateSheet): PlotView[] => (glass ? [whole, glass] : [whole])

/** Height of a drawn line at a place, by straight pieces. */
function upAt(line: readonly PlotPoint[], across: number): number | null {
  const i = line.findIndex((point) => point.across >= across)
  const [a, b] = [line[i - 1], line[i]]
  if (!a || !b) return null
  return a.up + ((b.up - a.up) * (across - a.across)) / (b.across - a.across)
}

describe('what is drawn is what the model says', () => {
  const curves = FITTED_CURVES['6L6']?.parameters
  test('each curve of the 6L6GC sheet lies within 0.1 % of the frame’s width and height of the model, all along', () => {
    if (!curves) throw new Error('No curves of the 6L6')
    const { frame, curves: drawn } = sheet().whole
    expect(drawn.length).toBeGreaterThanOrEqual(8)
    for (const { gridVolts, line } of drawn) {
      for (let across = 2; across < 600; across += 7) {
        const up = upAt(line, across)
        const model = (volts: number) => 1000 * tubeCurrents(curves, volts, 391, gridVolts).plate
        const [right, high] = [0.001 * frame.across.to, 0.001 * frame.up.to]
        if (up === null) expect(model(across)).toBeGreaterThan(frame.up.to * 0.98)
        else expect(up > model(across - right) - high && up < model(across + right) + high).toBe(true)
      }
    }
  })

  test('the table behind the curves holds the model at the ticks, to 1e-9 mA', () => {
    if (!curves) throw new Error('No curves of the 6L6')
    const { plateVolts, rows } = sheet().figures
    expect(plateVolts).toEqual([100, 200, 300, 400, 500, 600])
    for (const { gridVolts, milliamps } of rows) {
      const model = plateVolts.map((volts) => 1000 * tubeCurrents(curves, volts, 391, gridVolts).plate)
      expect(milliamps).toEqual(model)
    }
  })

  test('the grid volts of a point by the curves carry its current: 35.2 mA to 1e-6', () => {
    if (!curves) throw new Error('No curves of the 6L6')
    const grid = sheet().points[0]?.gridByCurves ?? Number.NaN
    expect(1000 * tubeCurrents(curves, 425, 391, grid).plate).toBeCloseTo(35.2, 6)
  })
})

describe.each(MANY)('laws: %s', (_name, drawn) => {
  test('curves rise with plate volts and with grid volts, one never touches another', () => {
    for (const { curves } of views(drawn)) {
      for (const { line } of curves)
        expect(line.every(({ up }, i) => i === 0 || up >= (line[i - 1]?.up ?? 0) - 1e-9)).toBe(true)
      curves.slice(1).forEach((hotter, i) => {
        const colder = curves[i]
        if (!colder) throw new Error('A curve is missing')
        expect(hotter.gridVolts).toBeGreaterThan(colder.gridVolts)
        for (const { across, up } of colder.line.slice(1)) {
          const above = upAt(hotter.line, across)
          if (above !== null) expect(above).toBeGreaterThanOrEqual(up)
        }
      })
    }
  })

  test('grid volts are round and not positive; no more curves than labels have room for', () => {
    for (const { curves } of views(drawn)) {
      expect(curves.length).toBeLessThanOrEqual(14)
      for (const { gridVolts } of curves) {
        expect(gridVolts).toBeLessThanOrEqual(0)
        expect(String(gridVolts).replace(/[-.0]/g, '').length).toBeLessThanOrEqual(3)
      }
    }
    expect(drawn.whole.curves.length).toBeGreaterThanOrEqual(4)
  })

  test('every point of every line lies in its frame; a curve ends at the right or the upper edge', () => {
    for (const { frame, curves, heat } of views(drawn)) {
      for (const { line, end, leaves } of curves) {
        expect(line.every((point) => inFrame(frame, point))).toBe(true)
        expect(leaves === 'right' ? end.across === frame.across.to : end.up === frame.up.to).toBe(true)
      }
      expect([...(heat?.line ?? []), ...(heat?.region ?? [])].every((point) => inFrame(frame, point))).toBe(true)
    }
    expect((drawn.loadPath?.points ?? []).every((point) => inFrame(drawn.whole.frame, point))).toBe(true)
  })

  test('the operating point and its box lie inside, the point in its box, on the whole sheet and under the glass', () => {
    for (const { at, box } of drawn.points) {
      expect(at.across > box.left && at.across < box.right && at.up > box.bottom && at.up < box.top).toBe(true)
      for (const { frame } of views(drawn)) {
        expect(inFrame(frame, { across: box.left, up: box.bottom })).toBe(true)
        expect(inFrame(frame, { across: box.right, up: box.top })).toBe(true)
      }
    }
  })

  test('labels that leave through the top stand apart by more than a fourteenth of the width', () => {
    const { curves, frame } = drawn.whole
    const tops = curves.filter(({ leaves }) => leaves === 'top').map(({ end }) => end.across / frame.across.to)
    const gaps = tops.slice(1).map((place, i) => (tops[i] ?? 0) - place)
    expect(gaps.every((gap) => gap > 1 / 14)).toBe(true)
  })
})

describe('the dissipation curve', () => {
  test('30 W: every point of it is 30.0 W, from the top of the frame to its right edge', () => {
    const { frame, heat } = sheet().whole
    const line = heat?.line ?? []
    expect(line.length).toBeGreaterThan(5)
    for (const { across, up } of line) expect((across * up) / 1000).toBeCloseTo(30, 6)
    expect(line[0]?.up).toBe(frame.up.to)
    expect(line.at(-1)?.across).toBe(frame.across.to)
  })

  test('the shaded region is the hot side: its corner is at the upper right, none of it below 30 W', () => {
    const { frame, heat } = sheet().whole
    expect(heat?.region).toContainEqual({ across: frame.across.to, up: frame.up.to })
    for (const { across, up } of heat?.region ?? []) expect(across * up).toBeGreaterThan(29_999)
  })

  test('a frame wholly above the limit is all shaded, one wholly below not at all', () => {
    const { frame } = sheet().glass ?? sheet().whole
    expect(heatLimit(frame, 5)).toMatchObject({ line: [], region: { length: 4 } })
    expect(heatLimit(frame, 500)).toEqual({ watts: 500, line: [], region: [] })
  })

  test('no rating, no limit', () => {
    expect(sheet({ rating: null }).whole.heat).toBeNull()
  })
})

describe('what is not known is not drawn', () => {
  test('a type without fitted curves says so', () => {
    const drawn = plateSheet(plotInput({ typeId: 'GU50', designation: 'GU50' }))
    expect(drawn).toEqual({ ok: false, fault: { code: 'no-curves', designation: 'GU50' } })
  })

  test('nothing read, nothing drawn', () => {
    expect(plateSheet(plotInput({ readings: [] }))).toMatchObject({ ok: false, fault: { code: 'nothing-read' } })
  })

  test('three screens at 389, 391 and 4 V, one of them dead: curves for 389 V', () => {
    const readings = [389, 391, 4].map((screenToCathode, i) => plotReading(`V${i}`, { screenToCathode }))
    expect(sheet({ readings }).screen).toEqual({ volts: 389, assumed: false, lowest: 4, highest: 391 })
  })

  test('a point is held against the curves at its own screen volts: with 4 V on the screen no tube carries 35 mA', () => {
    const readings = [plotReading('V4'), plotReading('V5', { screenToCathode: 4 }), plotReading('V6')]
    expect(sheet({ readings }).points.map(({ gridByCurves }) => gridByCurves === null)).toEqual([false, true, false])
  })

  test('of two rounds the later one gives the screen volts', () => {
    const readings = [
      plotReading('V4', { when: 'before', screenToCathode: 400 }),
      plotReading('V4', { when: 'after', screenToCathode: 391 }),
    ]
    expect(sheet({ readings }).screen).toMatchObject({ volts: 391, assumed: false })
  })

  test('no screen volts read: taken at the plate’s 425 V, and marked as assumed', () => {
    expect(sheet({ readings: [plotReading('V4', { screenToCathode: null })] }).screen).toMatchObject({
      volts: 425,
      assumed: true,
    })
  })

  test('without a load there is no load line', () => {
    expect(sheet().loadPath).toBeNull()
  })
})
