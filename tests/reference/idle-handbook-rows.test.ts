/**
 * Handbook operating rows as outside checks: the currents a row prints, put on
 * the bench as meter readings, must come back as the row's own Va·Ia and Vg2·Ig2.
 * Rows: US and European data handbooks, with the source beside each figure in the data.
 */
import { describe, expect, test } from 'vitest'
import type { Resistor } from '@/lib/domain/bias/idle-reading'
import { HANDBOOK } from '@/lib/domain/tube/handbook'
import { amps, ohms, ratio, volts } from '@/lib/domain/units'
import { idle, perfectMeter, variant } from '../domain/bias/reading-fixture'

const sense: Resistor = { id: 'sense', resistance: ohms(10), tolerance: ratio(0) }

const rows = HANDBOOK.filter(({ role }) => role === 'output').flatMap((type) =>
  type.rows.flatMap(({ label, currentsFor, figures, connection }) => {
    const { plateVolts, screenVolts, plateMilliamps, screenMilliamps } = figures
    if (connection !== 'pentode' || !plateVolts || !plateMilliamps || !screenMilliamps) return []
    const [plate, screen] = [plateMilliamps[0] / currentsFor, screenMilliamps[0] / currentsFor]
    const name = type.variants[0]?.designations[0] ?? type.id
    return [
      {
        row: `${type.id}, ${label}`,
        name,
        plateVolts: plateVolts[0],
        screenVolts: screenVolts?.[0] ?? null,
        plate,
        screen,
      },
    ]
  }),
)

describe('handbook rows on the bench', () => {
  test('there are at least 30 such rows', () => {
    expect(rows.length).toBeGreaterThanOrEqual(30)
  })

  test.each(rows)('$row', ({ name, plateVolts, screenVolts, plate, screen }) => {
    const result = idle(
      {
        variant: variant(name),
        plateVoltage: volts(plateVolts),
        cathodeVoltage: volts(0),
        screenVoltage: screenVolts === null ? null : volts(screenVolts),
        method: { kind: 'cathode-sense', drop: volts(((plate + screen) / 1000) * 10), resistor: sense },
        screen: { kind: 'stated', current: amps(screen / 1000), standardUncertainty: amps(0) },
      },
      { meter: perfectMeter },
    )
    expect(1000 * result.plateAmps.value).toBeCloseTo(plate, 9)
    expect(result.plateWatts.value).toBeCloseTo((plateVolts * plate) / 1000, 9)
    if (screenVolts !== null) expect(result.screenWatts?.value).toBeCloseTo((screenVolts * screen) / 1000, 9)
  })

  // Two handbooks' numbers that must agree: an idle row may not exceed the printed rating of its own sheet.
  test.each([
    ['6V6GT', 250, 45, 4.5],
    ['6L6', 250, 72, 5],
    ['EL34', 250, 100, 15],
    ['EL84', 250, 48, 5.5],
    ['6550', 250, 140, 12],
    ['6F6', 250, 34, 6.5],
    ['KT66', 250, 85, 6.3],
  ])(
    'single-ended row of the %s, %i V and %d mA, idles between 70 and 100 %% of its rating',
    (name, va, plate, screen) => {
      const { platePercent } = idle(
        {
          variant: variant(name),
          plateVoltage: volts(va),
          cathodeVoltage: volts(0),
          method: { kind: 'cathode-sense', drop: volts((plate + screen) / 100), resistor: sense },
          screen: { kind: 'stated', current: amps(screen / 1000), standardUncertainty: amps(0) },
        },
        { service: 'single-ended-class-a', meter: perfectMeter },
      )
      expect(platePercent?.value).toBeGreaterThan(70)
      expect(platePercent?.value).toBeLessThanOrEqual(100 + 1e-9)
    },
  )
})

describe('RETMA and European designations against the data', () => {
  // First figures of a US type are its heater volts, rounded (Radiotron Designer's Handbook, 4th edition).
  const spans: [RegExp, number, number][] = [
    [/^2A/, 2, 2.6],
    [/^5[A-Z]/, 4.6, 5.6],
    [/^6[A-Z]/, 5.6, 6.6],
    [/^12[A-Z]/, 11.6, 13],
    // First letter of a European type: E 6.3 V, G 5 V (European type designation scheme).
    [/^E[A-Z]/, 6.29, 6.31],
    [/^GZ/, 4.99, 5.01],
  ]

  test('heater volts agree with the first figures or letter of every designation', () => {
    const wrong = HANDBOOK.flatMap(({ heaters, variants }) =>
      variants
        .flatMap(({ designations }) => [...designations])
        .filter((designation) => {
          const span = spans.find(([pattern]) => pattern.test(designation))
          return span && !heaters.some(({ volts: [v] }) => v >= span[1] && v <= span[2])
        }),
    )
    expect(wrong).toEqual([])
  })

  test('first figure of a European type is its base: 3 octal, 8 noval, 9 seven-pin', () => {
    const bases = { '3': 'octal', '8': 'noval', '9': 'miniature-7' } as const
    const wrong = HANDBOOK.flatMap(({ base, variants }) =>
      variants
        .flatMap(({ designations }) => [...designations])
        .filter((designation) => {
          const figure = /^[EG][A-Z]{1,2}([389])\d/.exec(designation)?.[1] as keyof typeof bases | undefined
          return figure !== undefined && bases[figure] !== base.name
        }),
    )
    expect(wrong).toEqual([])
  })
})
