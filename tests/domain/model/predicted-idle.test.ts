import { describe, expect, it } from 'vitest'
import { individualTube, type TestPoint, untestedTube } from '@/lib/domain/model/individual-tube'
import { predictedIdle } from '@/lib/domain/model/predicted-idle'
import { loggedPoint, scaledTube } from '@/lib/domain/model/tube-scales'
import { type TypeModel, typeModel } from '@/lib/domain/model/type-model'
import { amps, siemens, volts } from '@/lib/domain/units'

function curves(typeId: string): TypeModel {
  const found = typeModel(typeId)
  if (!found.ok) throw new Error(found.fault)
  return found.value
}
const point = (plate: number, screen: number, grid: number): TestPoint => ({
  plateToCathode: volts(plate),
  screenToCathode: volts(screen),
  gridToCathode: volts(grid),
})
const SL = curves('6L6')
const IDLE = point(420, 415, -38)

function testedAt(at: TestPoint, type = SL) {
  const here = loggedPoint(type.parameters, at)
  const found = individualTube(type, [
    {
      point: at,
      plateCurrent: { value: amps(here.plate), standard: here.plate * 0.02 },
      transconductance: { value: siemens(here.gm), standard: here.gm * 0.03 },
      screenCurrent: null,
    },
  ])
  if (!found.ok) throw new Error(found.fault)
  return found.value
}

describe('predicted idle', () => {
  it('at the test point is what was read, with the uncertainty of the reading: 2 %', () => {
    const { plate } = predictedIdle(testedAt(IDLE), IDLE)
    expect(plate.value).toBeCloseTo(loggedPoint(SL.parameters, IDLE).plate, 12)
    expect(plate.share).toBeCloseTo(0.02, 6)
    expect(plate.high / plate.value).toBeCloseTo(Math.exp(0.04), 5)
    expect(plate.low / plate.value).toBeCloseTo(Math.exp(-0.04), 5)
  })

  it('has a narrower band the nearer the test point: 400 V below 350 V below 250 V below no test', () => {
    const shares = [
      predictedIdle(testedAt(point(400, 400, -36)), IDLE),
      predictedIdle(testedAt(point(350, 350, -28)), IDLE),
      predictedIdle(testedAt(point(250, 250, -14)), IDLE),
      predictedIdle(untestedTube(SL), IDLE),
    ].map(({ plate }) => plate.share)
    expect(shares).toEqual([...shares].sort((a, b) => a - b))
    expect(new Set(shares).size).toBe(4)
  })

  it('slopes by the scales are those of the current: moving each scale by 1e-6 agrees within 1e-5', () => {
    for (const type of [SL, curves('300B')]) {
      const here = loggedPoint(type.parameters, IDLE)
      for (const index of [0, 1, 2] as const) {
        const moved = (by: number): number => {
          const scales = [0, 0, 0].map((zero, i) => (i === index ? zero + by : zero)) as [number, number, number]
          return Math.log(loggedPoint(scaledTube(type.parameters, scales), IDLE).plate)
        }
        expect(Math.abs((moved(1e-6) - moved(-1e-6)) / 2e-6 - here.plateSlopes[index])).toBeLessThan(1e-5)
      }
    }
  })

  it('carries a wider band where one row cannot fix the cutoff: EL37 at -38 V against its own -13.5 V', () => {
    const type = curves('EL37')
    const cold = predictedIdle(untestedTube(type), point(425, 416, -38))
    const hot = predictedIdle(untestedTube(type), point(250, 250, -13.5))
    expect(type.cutoffKnown).toBe(false)
    expect(cold.extrapolated).toBe(true)
    expect(hot.extrapolated).toBe(false)
    expect(cold.curveShare).toBeGreaterThan(3 * hot.curveShare)
  })

  it('is finite with a finite band past cutoff and at a plate below its cathode', () => {
    for (const at of [point(420, 415, -400), point(-20, 300, -10), point(0, 0, 0)])
      for (const tube of [untestedTube(SL), testedAt(point(250, 250, -14))]) {
        const { plate, screen } = predictedIdle(tube, at)
        for (const one of [plate.value, plate.low, plate.high, plate.share, screen.value, screen.low, screen.high])
          expect(Number.isFinite(one)).toBe(true)
        expect(plate.low).toBeLessThanOrEqual(plate.value)
        expect(plate.high).toBeGreaterThanOrEqual(plate.value)
      }
  })
})
