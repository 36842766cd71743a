import { describe, expect, test } from 'vitest'
import { HANDBOOK } from '@/lib/domain/tube/handbook'
import { provenanceOf } from '@/lib/domain/tube/handbook-sources'
import type { Figure, HandbookRatings, HandbookType, LimitKey } from '@/lib/domain/tube/handbook-type'
import { PIN_COUNTS } from '@/lib/domain/tube/tube-ratings'

const isRatings = (ratings: unknown): ratings is HandbookRatings => typeof ratings === 'object' && ratings !== null
const ratingsOf = (type: HandbookType): HandbookRatings[] =>
  [...type.variants.map(({ ratings }) => ratings), type.otherSection].filter(isRatings)

function figuresOf(type: HandbookType): [where: string, figure: Figure][] {
  const named = (where: string, figures: object): [string, Figure][] =>
    Object.entries(figures).map(([key, figure]) => [`${type.id} ${where} ${key}`, figure as Figure])
  return [
    ...ratingsOf(type).flatMap((ratings) => named(ratings.appliesTo, ratings.limits)),
    ...type.rows.flatMap((row) => named(row.label, row.figures)),
    ...type.heaters.flatMap(({ volts, amps }) => named('heater', { volts, amps })),
  ]
}

const all = HANDBOOK.flatMap(figuresOf)
const type = (id: string) => HANDBOOK.find((one) => one.id === id) ?? expect.fail(`no ${id}`)

describe('handbook data', () => {
  test('45 types, each id once', () => {
    expect(HANDBOOK).toHaveLength(45)
    expect(new Set(HANDBOOK.map(({ id }) => id)).size).toBe(45)
  })

  test('every one of more than 1000 numbers is finite and has a readable provenance', () => {
    expect(all.length).toBeGreaterThan(1000)
    for (const [where, [value, source]] of all) {
      expect(Number.isFinite(value), where).toBe(true)
      const { basis, text, confidence } = provenanceOf(source)
      expect(text.length, where).toBeGreaterThan(10)
      expect(confidence === null, where).toBe(basis === 'published')
      if (basis === 'from-memory') expect(text, where).toMatch(/^from memory: /)
    }
  })

  test('every limit is above zero, every grid voltage at or below', () => {
    for (const { rows, ...rest } of HANDBOOK) {
      for (const { limits } of ratingsOf({ rows, ...rest })) {
        for (const [key, figure] of Object.entries(limits)) expect(figure?.[0], key).toBeGreaterThan(0)
      }
      for (const { figures } of rows) expect(figures.gridVolts?.[0] ?? 0).toBeLessThanOrEqual(0)
    }
  })

  // Exceptions above 10 % would be named here with the reason; there are none.
  const MU_EXCEPTIONS: readonly string[] = []
  test('gm·rp is µ within 10 % on every triode row that prints all three', () => {
    const rows = HANDBOOK.flatMap(({ id, rows: own }) => own.map((row) => ({ id, ...row })))
    const checked = rows.flatMap(({ id, label, figures }) => {
      const { mu, gmMilliampsPerVolt: gm, plateResistanceKilohms: rp } = figures
      return mu && gm && rp ? [{ name: `${id} ${label}`, off: Math.abs((gm[0] * rp[0]) / mu[0] - 1) }] : []
    })
    expect(checked.length).toBeGreaterThanOrEqual(30)
    expect(checked.filter(({ off }) => off > 0.1).map(({ name }) => name)).toEqual(MU_EXCEPTIONS)
  })

  test('heaters take 1 to 16 W, the same watts however a tapped heater is wired', () => {
    for (const { id, heaters } of HANDBOOK) {
      const watts = heaters.map(({ volts, amps }) => volts[0] * amps[0])
      for (const one of watts) {
        expect(one, id).toBeGreaterThan(1)
        expect(one, id).toBeLessThan(16)
        expect(one, id).toBeCloseTo(watts[0] ?? 0, 9)
      }
    }
  })

  test('within a type, no design-centre limit of a plain number lies above the design-maximum of its A issue', () => {
    const pairs: [string, string, string][] = [
      ['6V6', '6V6GT', '6V6GTA'],
      ['6L6', '6L6GB', '6L6GC'],
      ['7189', '7189', '7189A'],
      ['6AQ5', '6AQ5', '6AQ5A'],
      ['6550', '6550', '6550A'],
      ['12AX7', '12AX7', '12AX7A'],
      ['12AU7', '12AU7', '12AU7A'],
      ['6AU6', '6AU6', '6AU6A'],
      ['5AR4', 'GZ34', '5AR4'],
    ]
    // A smaller grid leak or source resistance is the milder limit, so those are left out.
    const rising: LimitKey[] = [
      'plateVolts',
      'screenVolts',
      'plateWatts',
      'screenWatts',
      'cathodeMilliamps',
      'peakInverseVolts',
      'peakPlateMilliamps',
      'outputMilliamps',
    ]
    for (const [id, plain, later] of pairs) {
      const of = (name: string) => type(id).variants.find(({ designations }) => designations.includes(name))?.ratings
      const [centre, maximum] = [of(plain), of(later)]
      if (!isRatings(centre) || !isRatings(maximum)) return expect.fail(`${id} lacks ratings`)
      expect([centre.system, maximum.system]).toEqual(['design-centre', 'design-maximum'])
      for (const key of rising) {
        const [low, high] = [centre.limits[key]?.[0], maximum.limits[key]?.[0]]
        if (low !== undefined && high !== undefined) expect(low, `${id} ${key}`).toBeLessThanOrEqual(high)
      }
    }
  })

  test('pins fit the base and carry two heater or filament ends', () => {
    for (const { id, base } of HANDBOOK) {
      if (!base.pins) continue
      const numbers = Object.keys(base.pins).map(Number)
      expect(Math.max(...numbers), id).toBeLessThanOrEqual(PIN_COUNTS[base.name])
      expect(Math.min(...numbers), id).toBeGreaterThanOrEqual(1)
      const ends = Object.values(base.pins).filter((electrode) => /^[hf]([ +-]|$)/.test(electrode))
      expect(ends, id).toHaveLength(2)
    }
  })

  test('every pentode or beam tetrode with printed pins has plate, both grids and cathode', () => {
    const screened = HANDBOOK.filter(({ tubeClass }) => /tetrode|power-pentode|signal-pentode/.test(tubeClass))
    for (const { id, base } of screened) {
      const electrodes = Object.values(base.pins ?? {})
      for (const electrode of base.pins ? [/^a$/, /^g2$/, /^g1$/, /^k/] : []) {
        expect(
          electrodes.some((one) => electrode.test(one)),
          `${id} ${electrode}`,
        ).toBe(true)
      }
    }
  })
})

describe('figures that must not be used', () => {
  test('pins of 7868, 6973 and 6EU7 are not printed', () => {
    expect(['7868', '6973', '6EU7'].map((id) => type(id).base.pins)).toEqual([null, null, null])
  })

  test('which half of a 12DW7 has the high µ is nowhere said', () => {
    const { base, rows, notes } = type('12DW7')
    expect(Object.values(base.pins ?? {}).join()).not.toMatch(/mu/i)
    expect(rows.map(({ label }) => label).join()).not.toMatch(/pin|unit [12]/i)
    expect(notes.join()).toMatch(/not settled/i)
  })

  test('KT77, EL37 and 5992, whose sources contradict each other, have no ratings', () => {
    for (const id of ['KT77', 'EL37', '5992'])
      expect(
        type(id).variants.map(({ ratings }) => ratings),
        id,
      ).toEqual([null])
  })

  test('7 mA is full-signal screen current of the 6V6, never zero-signal', () => {
    const rows = type('6V6').rows
    expect(rows.map(({ figures }) => figures.screenMilliamps?.[0])).not.toContain(7)
    expect(rows.find(({ label }) => /single, 250 V/.test(label))?.figures.screenMilliamps?.[0]).toBe(4.5)
  })
})
