import { describe, expect, it } from 'vitest'
import { DOUBTFUL } from '@/lib/fit/doubtful-rows'
import { type ModelRow, modelRows } from '@/lib/fit/model-row'
import { ADDED_LATER, chosenByRule, isPutAside, PUT_ASIDE, rowName } from '@/lib/fit/put-aside'
import { predictRow } from '@/lib/fit/row-prediction'

const rows = modelRows()
function named(name: string): ModelRow {
  const found = rows.find((row) => rowName(row) === name)
  if (!found) throw new Error(`No usable row is called ${name}`)
  return found
}

describe('rows as the model sees them', () => {
  it('currents of a pair are halved: 6L6GC 450/400/-37 V, 116 mA for two, is 58 mA', () => {
    const row = named('6L6 6L6GC push-pull AB1, 450/400 V (two)')
    expect([row.plate, row.screen, row.grid]).toEqual([450, 400, -37])
    expect(row.ia).toBeCloseTo(0.058, 12)
    expect(row.ig2).toBeCloseTo(0.0028, 12)
  })

  it('a resistor gives the grid volts: 170 ohm with 75 + 5.4 mA is -13.668 V, 250 V being plate to cathode', () => {
    const row = named('6L6 class A1 single, 250 V cathode bias')
    expect(row.grid).toBeCloseTo(-13.668, 9)
    expect(row.plate).toBe(250)
    expect(row.printedTo).toBe('cathode')
  })

  it('a common resistor carries both tubes: EL84, 130 ohm, 2 x (31 + 3.5) mA is -8.97 V', () => {
    expect(named('EL84 push-pull AB1, 250 V (per valve)').grid).toBeCloseTo(-8.97, 9)
  })

  it('supply volts lose the cathode and the screen resistor: EL34 425 V over 1 k for both is 416.2 V', () => {
    const row = named('EL34 push-pull B, fixed bias (per valve)')
    expect(row.plate).toBe(425)
    expect(row.screen).toBeCloseTo(416.2, 9)
  })

  it('small-signal plates are printed against chassis: 12AV7, 150 V on 56 ohm, 18 mA is 148.992 V', () => {
    const row = named('12AV7 150 V')
    expect(row.printedTo).toBe('ground')
    expect(row.plate).toBeCloseTo(148.992, 9)
  })

  it('a strapped screen follows the plate and its current is in the one printed', () => {
    const row = named('6V6 triode-connected A1')
    expect(row.screen).toBe(250)
    expect(row.ig2).toBeNull()
  })

  it('no two rows of a curve stand at the same point with the same current', () => {
    const points = rows.map((row) => `${row.key} ${row.connection} ${row.plate} ${row.screen} ${row.grid} ${row.ia}`)
    expect(new Set(points).size).toBe(points.length)
    expect(new Set(rows.map(rowName)).size).toBe(rows.length)
  })

  it('a resistor row is solved, not looked up: Vk = R·Ik to 1e-9 V', () => {
    const row = named('EL84 push-pull AB1, 250 V (per valve)')
    const tube = { kind: 'pentode', p: 0.0036, mu: 19, muA: 900, r: 0.11, kp: 150 } as const
    const { ia, ig2 } = predictRow(tube, row)
    const again = predictRow(tube, { ...row, selfBias: null, grid: -260 * (ia + ig2) })
    expect(again.ia).toBeCloseTo(ia, 11)
  })
})

describe('rows put aside', () => {
  it('are the ones the rule gives on the rows of that day', () => {
    const thatDay = rows.filter((row) => row.typeId === row.key && !ADDED_LATER.includes(rowName(row)))
    expect([...chosenByRule(thatDay)].sort()).toEqual([...PUT_ASIDE].sort())
  })

  it('are at least twelve and none of them is doubtful', () => {
    expect(rows.filter(isPutAside).length).toBeGreaterThanOrEqual(12)
    expect(PUT_ASIDE.filter((name) => DOUBTFUL.has(name))).toEqual([])
  })
})

describe('doubtful rows', () => {
  it('are rows that exist', () => {
    for (const name of DOUBTFUL.keys()) expect(named(name).ia).toBeGreaterThan(0)
  })

  it('6L6 triode-connected: 65 mA at -16 V, 4 V further at a mean of 5.33 mA/V, is 43.7 mA, 9 % off', () => {
    const near = named('6L6 push-pull A1, 250 V')
    const row = named('6L6 triode-connected A1')
    const cathode = near.ia + (near.ig2 ?? 0)
    const gmOfBoth = ((near.gm ?? 0) * cathode) / near.ia
    const expected = cathode - ((gmOfBoth + (row.gm ?? 0)) / 2) * (near.grid - row.grid)
    expect(expected * 1000).toBeCloseTo(43.7, 1)
    expect(expected / row.ia - 1).toBeGreaterThan(0.08)
  })

  it('EL34 distributed load: 1.0 V of grid from a row with less than half its current', () => {
    const fixed = named('EL34 push-pull B, fixed bias (per valve)')
    const row = named('EL34 push-pull distributed load, 430 V supply, cathode bias (per valve)')
    const volts = row.grid - fixed.grid - (fixed.screen - row.screen) / 10.5
    expect(volts).toBeCloseTo(1, 0)
    expect(row.ia / fixed.ia).toBeGreaterThan(2)
  })

  it('12AT7 at 100 V, -1 V: two sources, 3.0 and 3.7 mA', () => {
    const us = named('12AT7 100 V')
    expect(us.grid).toBeCloseTo(-1, 2)
    expect(us.ia / named('12AT7 100 V, -1 V').ia).toBeGreaterThan(1.2)
  })
})
