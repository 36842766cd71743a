import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { SocketReading } from '@/lib/domain/bias/idle-reading'
import { amps, volts } from '@/lib/domain/units'
import { idle, overCathodeSense, variant } from './reading-fixture'

const plateVolts = fc.double({ min: 100, max: 550, noNaN: true })
const drop = fc.double({ min: 0.002, max: 0.2, noNaN: true })
const tube = fc.constantFrom('6L6GC', 'EL34', 'EL84', '6V6GT', 'KT88', '6550', '7591', '2A3')

describe('laws of idle', () => {
  test('more current never lowers the per cent, nor the watts', () => {
    fc.assert(
      fc.property(tube, plateVolts, drop, drop, (name, plate, one, two) => {
        const at = (sense: number) =>
          idle({
            variant: variant(name),
            plateVoltage: volts(plate),
            cathodeVoltage: volts(0),
            method: overCathodeSense(sense),
          })
        const [low, high] = [at(Math.min(one, two)), at(Math.max(one, two))]
        expect(high.platePercent?.value).toBeGreaterThanOrEqual(low.platePercent?.value ?? Number.NaN)
        expect(high.plateWatts.value).toBeGreaterThanOrEqual(low.plateWatts.value)
      }),
    )
  })

  test('every band contains its value and is between 1.65 and 2 standard uncertainties wide, either way', () => {
    fc.assert(
      fc.property(tube, plateVolts, drop, (name, plate, sense) => {
        const result = idle({
          variant: variant(name),
          plateVoltage: volts(plate),
          screenVoltage: volts(plate),
          method: overCathodeSense(sense),
        })
        for (const band of [
          result.plateWatts,
          result.plateAmps,
          result.screenAmps,
          result.cathodeAmps,
          result.plateToCathodeVolts,
        ]) {
          expect(band.low).toBeLessThanOrEqual(band.value)
          expect(band.high).toBeGreaterThanOrEqual(band.value)
          if (band.standardUncertainty === 0) {
            expect(band.plusMinus).toBe(0)
            continue
          }
          const factor = (band.high - band.low) / (2 * band.standardUncertainty)
          expect(factor).toBeGreaterThanOrEqual(1.65)
          expect(factor).toBeLessThanOrEqual(2 + 1e-9)
        }
      }),
    )
  })

  test('plate and screen current add up to cathode current', () => {
    fc.assert(
      fc.property(tube, drop, (name, sense) => {
        const { plateAmps, screenAmps, cathodeAmps } = idle({ variant: variant(name), method: overCathodeSense(sense) })
        expect(plateAmps.value + screenAmps.value).toBeCloseTo(cathodeAmps.value, 12)
      }),
    )
  })

  test('per cent is watts over the rating, band and all', () => {
    fc.assert(
      fc.property(tube, plateVolts, drop, (name, plate, sense) => {
        const { platePercent, plateWatts, plateRatingWatts } = idle({
          variant: variant(name),
          plateVoltage: volts(plate),
          method: overCathodeSense(sense),
        })
        expect(platePercent?.value).toBeCloseTo((100 * plateWatts.value) / (plateRatingWatts ?? 0), 9)
        expect(platePercent?.plusMinus).toBeCloseTo((100 * plateWatts.plusMinus) / (plateRatingWatts ?? 0), 9)
      }),
    )
  })

  test('setting what the target asks for lands in the middle of the window', () => {
    fc.assert(
      fc.property(tube, plateVolts, drop, (name, plate, sense) => {
        const given: Partial<SocketReading> = {
          variant: variant(name),
          plateVoltage: volts(plate),
          cathodeVoltage: volts(0),
        }
        const { target } = idle({ ...given, method: overCathodeSense(sense) })
        const shown = target?.meterReading?.volts ?? Number.NaN
        expect(idle({ ...given, method: overCathodeSense(shown) }).platePercent?.value).toBeCloseTo(65, 6)
      }),
    )
  })

  test('a measured screen current is believed over the typical share', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.03, noNaN: true }), (screen) => {
        const stated = { kind: 'stated', current: amps(screen), standardUncertainty: amps(0) } as const
        expect(idle({ screen: stated }).plateAmps.value).toBeCloseTo(0.0352 - screen, 12)
      }),
    )
  })
})
