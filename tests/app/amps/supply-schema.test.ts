import { describe, expect, it } from 'vitest'
import { readValues } from '@/app/_components/form/read-form'
import { supplySchema, supplyValues } from '@/app/amps/[ampId]/supply/supply-schema'
import { NO_SUPPLY_FACTS, SOLID_STATE, type SupplyFacts } from '@/lib/domain/amp/supply-facts'

const FACTS: SupplyFacts = {
  openSupplyVolts: 470,
  sourceOhms: 0,
  rectifierType: '5AR4',
  reservoirMicrofarads: 40,
  screenFeed: 'ultralinear-tap',
  ultralinearTapPercent: 40,
  screenDropperOhms: 110,
  gridSupplyVolts: -45.5,
  gridColdestVolts: -58,
  gridHottestVolts: -38,
  gridLeakOhms: 220_000,
  heaterWindingVolts: 6.3,
  heaterWindingAmps: 4.5,
  dischargeOhms: 100_000,
}

const read = (over: Record<string, string>, facts = NO_SUPPLY_FACTS) => {
  const { base: _base, ...values } = supplyValues('a1', 3, facts)
  return readValues(supplySchema, { ...values, ...over })
}
const factsOf = (over: Record<string, string>) => {
  const result = read(over)
  return result.ok ? result.value.facts : result.faults
}

describe('the form of supply and bias', () => {
  it.each([
    ['every fact known', FACTS],
    ['silicon', { ...FACTS, rectifierType: SOLID_STATE }],
    ['nothing known', NO_SUPPLY_FACTS],
  ])('gives back the very facts it was filled with: %s', (_name, facts) => {
    expect(read({}, facts)).toEqual({ ok: true, value: { ampId: 'a1', version: 3, facts } })
  })

  it('reads kΩ of a grid leak as ohms, and a comma as the decimal mark', () => {
    expect(factsOf({ gridLeakOhms: '220', dischargeOhms: '4,7' })).toMatchObject({
      gridLeakOhms: 220_000,
      dischargeOhms: 4700,
    })
  })

  it('keeps an empty box as not known, and 0 Ω of source resistance as 0', () => {
    expect(factsOf({ sourceOhms: '' })).toMatchObject({ sourceOhms: null })
    expect(factsOf({ sourceOhms: '0' })).toMatchObject({ sourceOhms: 0 })
  })

  it.each([
    ['openSupplyVolts', '19', 'Supply with nothing drawn: 19 V is too low. It must be between 20 and 2000 V.'],
    ['gridColdestVolts', '58', 'Grid supply, coldest: 58 V is too high. It must be between -300 and 0 V.'],
    ['ultralinearTapPercent', '43x', 'Screen tap: “43x” is not a number. Type a number between 0 and 100 %.'],
    ['reservoirMicrofarads', '0', 'Reservoir: 0 µF is too low. It must be between 0.1 and 5000 µF.'],
  ])('refuses %s “%s” beside its box', (box, typed, sentence) => {
    expect(factsOf({ [box]: typed })).toEqual({ [box]: sentence })
  })

  it('refuses a coldest grid supply that is hotter than the hottest', () => {
    expect(factsOf({ gridColdestVolts: '-38', gridHottestVolts: '-58' })).toEqual({
      gridColdestVolts: 'Grid supply, coldest: -38 V is less negative than the hottest, -58 V. Swap the two.',
    })
  })

  it('refuses screens on a tap without saying which tap', () => {
    expect(factsOf({ screenFeed: 'ultralinear-tap' })).toHaveProperty('ultralinearTapPercent')
  })
})
