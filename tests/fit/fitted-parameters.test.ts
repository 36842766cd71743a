import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { FITTED_CURVES } from '@/lib/domain/model/fitted-parameters'
import { cutoffKnown, diodeCurves, fitAll, fittedRows } from '@/lib/fit/fit-all'
import { fitType } from '@/lib/fit/fit-type'
import { modelRows } from '@/lib/fit/model-row'
import { parameterFile } from '@/lib/fit/parameter-file'
import { predictRow } from '@/lib/fit/row-prediction'
import { firstDifference } from '@/lib/fit/same-table'

const file = new URL('../../lib/domain/model/fitted-parameters.ts', import.meta.url)

describe('parameter file', () => {
  it('is what a fresh fit of every curve gives, each number within 1e-4 of itself', () => {
    expect(firstDifference(readFileSync(file, 'utf8'), parameterFile(fitAll()))).toBeNull()
  }, 120_000)

  it('one parameter changed by 0.1 % is noticed', () => {
    const text = readFileSync(file, 'utf8')
    const key = 'mu: '
    const at = text.indexOf(key) + key.length
    const value = Number.parseFloat(text.slice(at))
    const changed = text.slice(0, at) + text.slice(at).replace(String(value), String(value * 1.001))
    expect(firstDifference(changed, text)).toContain('line')
  })

  it('a missing curve is noticed', () => {
    const text = readFileSync(file, 'utf8')
    expect(firstDifference(text.split('\n').slice(0, -20).join('\n'), text)).toContain('nothing')
  })

  it('has a curve for every key with a usable row', () => {
    expect(Object.keys(FITTED_CURVES).sort()).toEqual([...fittedRows().keys()].sort())
    expect(Object.keys(diodeCurves()).length).toBeGreaterThanOrEqual(8)
  })
})

describe('cutoff', () => {
  const rowsOf = (key: string) => fittedRows().get(key) ?? []

  it('one class A row does not fix it: EL34 fitted to 250/250/-12.2 V alone gives over 45 mA where -38 V prints 30', () => {
    const [first] = rowsOf('EL34')
    const cold = rowsOf('EL34').find((row) => row.grid === -38)
    if (!first || !cold) throw new Error('The EL34 rows have changed')
    expect(predictRow(fitType([first]), cold).ia).toBeGreaterThan(0.045)
    expect(predictRow(fitType(rowsOf('EL34')), cold).ia).toBeLessThan(0.034)
    expect(cutoffKnown([first])).toBe(false)
  })

  it('is known for 6V6, 6L6, EL34, EL84, KT88, 6550 and 7591, not for EL37', () => {
    const known = (key: string): boolean | undefined => FITTED_CURVES[key]?.cutoffKnown
    expect(['6V6', '6L6', 'EL34', 'EL84', 'KT88', '6550', '7591'].map(known)).toEqual(new Array(7).fill(true))
    expect(known('EL37')).toBe(false)
  })
})

describe('fitter', () => {
  it('finds known parameters again: readings made by a curve are met within 0.3 %', () => {
    // Priors pull a little; without them the readings would be met exactly.
    const rows = modelRows().filter((row) => row.key === '6L6')
    const tube = { kind: 'pentode', p: 0.0014, mu: 8.5, muA: 180, r: 0.09, kp: 26 } as const
    const made = rows.map((row) => {
      const { ia, ig2, gm, rp } = predictRow(tube, row)
      const pentode = row.connection === 'pentode'
      return { ...row, ia, ig2: pentode ? ig2 : null, gm, rp, mu: null }
    })
    const found = fitType(made)
    for (const row of made) expect(Math.abs(predictRow(found, row).ia / row.ia - 1)).toBeLessThan(0.003)
  })
})
