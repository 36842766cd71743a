import { expect, test } from 'vitest'
import { answer, faults } from './answers'

const reservoir = { capacitanceMicrofarads: 100, chargedVolts: 450, bleederKilohms: 220, safeVolts: 60 }

// t = RC·ln(450/60) = 22 s · 2.0149; E = ½·100 µF·450²; P = 450²/220 kΩ. Worked by hand.
test('100 µF at 450 V through 220 kΩ is at 60 V after 44.3 s, holds 10.1 J, takes 0.92 W at first', async () => {
  const { seconds, energyJoules, peakBleederWatts, timeConstantSeconds } = await answer('discharge', reservoir)
  expect(seconds).toBeCloseTo(44.33, 2)
  expect(energyJoules).toBeCloseTo(10.13, 2)
  expect(peakBleederWatts).toBeCloseTo(0.9205, 4)
  expect(timeConstantSeconds).toBe(22)
})

// 0.47 s · ln(500/60) = 0.47 s · 2.1203; 500²/10 kΩ.
test('47 µF at 500 V through 10 kΩ is at 60 V after 1.00 s and takes 25 W at first', async () => {
  const given = { capacitanceMicrofarads: 47, chargedVolts: 500, bleederKilohms: 10, safeVolts: 60 }
  const { seconds, peakBleederWatts } = await answer('discharge', given)
  expect(seconds).toBeCloseTo(0.9965, 4)
  expect(peakBleederWatts).toBe(25)
})

test('20 % more capacitance and 5 % more resistance take 1.26 times as long', async () => {
  const { seconds, secondsWithinTolerances } = await answer('discharge', reservoir)
  expect(secondsWithinTolerances / seconds).toBeCloseTo(1.26, 3)
  const exact = { ...reservoir, capacitanceTolerancePercent: 0, bleederTolerancePercent: 0 }
  expect((await answer('discharge', exact)).secondsWithinTolerances).toBe(seconds)
})

test('below the safe voltage already: 0 s', async () => {
  expect((await answer('discharge', { ...reservoir, chargedVolts: 40 })).seconds).toBe(0)
})

test('0 V is never reached, so it is refused as the safe voltage', async () => {
  expect(await faults('discharge', { ...reservoir, safeVolts: 0 })).toEqual([
    { code: 'out-of-bounds', path: 'safeVolts', sentence: 'safeVolts is 0; it must be above 0.' },
  ])
})

test('the answer warns that a computed time is no proof', async () => {
  expect((await answer('discharge', reservoir)).cautions.join(' ')).toMatch(/no proof.*Measure before touching/)
})
