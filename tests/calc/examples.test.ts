import { expect, test } from 'vitest'
import { type CalculatorName, loadCalculator } from '@/lib/calc/calculators'
import { answer } from './answers'

const answered = async (name: CalculatorName) => answer(name, (await loadCalculator(name)).example)

// 1.594 V / 41 Ω = 38.88 mA; 450 V · 38.88 mA = 17.50 W, 70.0 % of 25 W; 5.2 V / 1 kΩ = 5.2 mA, 440 V of it 2.288 W,
// 28.6 % of 8 W. 65 % of 25 W at 450 V is 36.11 mA, 1.481 V over 41 Ω. Worked by hand.
test('the idle example: 38.88 mA, 17.5 W, 70.0 %, screen 5.2 mA and 2.29 W, next aim 1.481 V', async () => {
  const [v3, v4] = (await answered('idle')).sockets
  expect([v3.plateMilliamps.value, v3.plateWatts.value, v3.platePercent.value]).toEqual([38.88, 17.5, 69.98])
  expect([v3.screenMilliamps.value, v3.screenWatts.value, v3.screenPercent.value]).toEqual([5.2, 2.288, 28.6])
  expect(v3.target).toMatchObject({ percent: 65, plateMilliamps: 36.11, meterShows: { millivolts: 1481 } })
  expect(v3.verdict).toMatchObject({ verdict: 'uncertain', limitInBand: 'high' })
  // 41.2 mV / 1 Ω; what is not screen current is plate current.
  expect(v4.cathodeMilliamps.value).toBe(41.2)
  expect(v4.plateMilliamps.value + v4.screenMilliamps.value).toBeCloseTo(41.2, 1)
})

// Ohm and Kirchhoff over the parts of the example: 465 V less 90 Ω of supply; 470 Ω of dropper; 41 and 44 Ω of primary;
// −42 V at the grid and 1 Ω below the cathode. No tube equation enters.
test('the predict example: every resistor drops what its current says', async () => {
  const { sockets, circuit } = await answered('predict')
  const { reservoirVolts, screenNodeVolts, supplyMilliamps, sides } = circuit
  expect(reservoirVolts).toBeCloseTo(465 - 0.09 * supplyMilliamps, 0)
  expect(sides.A.plateVolts).toBeCloseTo(reservoirVolts - 0.041 * sides.A.plateMilliamps, 0)
  expect(sides.B.plateVolts).toBeCloseTo(reservoirVolts - 0.044 * sides.B.plateMilliamps, 0)
  const toScreens = supplyMilliamps - sides.A.plateMilliamps - sides.B.plateMilliamps
  expect(screenNodeVolts).toBeCloseTo(reservoirVolts - 0.47 * toScreens, 0)
  for (const { plateMilliamps, screenMilliamps, gridToCathodeVolts } of sockets) {
    const cathodeMilliamps = plateMilliamps.value + screenMilliamps.value
    expect(gridToCathodeVolts.value).toBeCloseTo(-42 - cathodeMilliamps / 1000, 2)
  }
})

test('the tested tube of the predict example has a narrower band than the untested one', async () => {
  const [tested, untested] = (await answered('predict')).sockets
  const width = ({ plateMilliamps: { low, high, value } }: typeof tested) => (high - low) / value
  expect(tested.tube.knownBy).toBe('current-and-transconductance')
  expect(width(tested)).toBeLessThan(width(untested))
})
