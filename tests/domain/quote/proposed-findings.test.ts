import { describe, expect, it } from 'vitest'
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { benchResult } from '@/lib/domain/bench/bench-result'
import type { ReadingSet } from '@/lib/domain/bench/reading-set'
import { proposedFindings } from '@/lib/domain/quote/proposed-findings'
import { ohms } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { ampDetails, outputSocket } from '@/tests/support/amps'
import { BENCH_SHOP } from '@/tests/support/bench-shop'

const grid = { biasKind: 'grid-supplied', typeFitted: '6L6GC', senseOhms: 1 } as const
const sheet: AmpSheet = {
  amp: { ...ampDetails({ mainsVolts: 120 }), id: 'a', customerId: 'c', version: 1 },
  sockets: ['V3', 'V4'].map((position, place) => ({ ...outputSocket(position, grid), id: position, place })),
}

const blank = {
  method: 'cathode-sense',
  cathodeVolts: 0,
  screenVolts: null,
  gridVolts: null,
  halfDropVolts: null,
  screenDropVolts: null,
} as const
const set = (drops: readonly (number | null)[]): ReadingSet => ({
  ...{
    id: 's',
    jobId: 'j',
    phase: 'before',
    takenAt: new Date(0),
    takenBy: 'Ines',
    instrumentId: 'm',
    instrumentName: 'Meter',
    calibratedOn: null,
  },
  ...{
    wallVolts: 120,
    warmupMinutes: 15,
    signalState: 'no signal',
    resistorTolerancePercent: 1,
    copperWarmingCelsius: 15,
    note: '',
    version: 1,
  },
  meter: { id: 'Meter', percentOfReading: 0.5, counts: 2, displayCounts: 6000, inputResistance: ohms(1e7) },
  entries: drops.map((senseDropVolts, index) => ({
    ...blank,
    socketId: `V${3 + index}`,
    plateVolts: 450,
    senseDropVolts,
  })),
})

const said = (drops: readonly (number | null)[], words: 'US' | 'UK' = 'US') =>
  proposedFindings(benchResult(sheet, set(drops), BENCH_SHOP), wordsFor(words))

describe('sentences proposed from the readings', () => {
  it('70 mA at 450 V in a 30 W tube is over its rating, and is said so with figures, the guess marked', () => {
    const [v3] = said([0.07, 0.03])
    // 70 mA less the usual screen share, times 450 V, lies above 29 W: more than 70 % of 30 W.
    expect(v3).toMatch(
      /^V3 \(6L6GC\): idles at 6\d\.\d mA and 450 V plate to cathode, (29|30|31)\.\d W, in part estimated\. .*too hot for the window of 60 % to 70 %/,
    )
  })

  it('a socket that was not read is not spoken of', () => {
    expect(said([0.04, null]).some((text) => text.startsWith('V4'))).toBe(false)
  })

  it('a dead socket is told as such', () => {
    expect(said([0.04, 0.0001])[1]).toMatch(/^V4 .*the socket is dead/)
  })

  it('says anode in a shop of UK words', () => {
    expect(said([0.04, 0.04], 'UK')[0]).toContain('450 V anode to cathode')
  })
})
