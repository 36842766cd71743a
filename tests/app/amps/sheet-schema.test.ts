import { describe, expect, it } from 'vitest'
import { readValues } from '@/app/_components/form/read-form'
import { sheetFormValues, sheetSchema } from '@/app/amps/[ampId]/sheet/sheet-schema'
import { ampDetails, cathodePair } from '@/tests/support/amps'

const amp = { id: 'a1', customerId: 'c1', version: 3, ...ampDetails() }
const sockets = cathodePair().map((socket, place) => ({ ...socket, id: `s${place}`, place }))
const { base: _base, ...values } = sheetFormValues({ amp, sockets })

const read = (over: Record<string, string>) => readValues(sheetSchema, { ...values, ...over })
const faultsOf = (over: Record<string, string>) => {
  const result = read(over)
  return result.ok ? {} : result.faults
}

describe('the sheet’s form', () => {
  it('gives back the very sheet it was filled with', () => {
    const result = read({})
    const rows = sockets.map(({ place: _place, ...socket }) => socket)
    expect(result).toEqual({ ok: true, value: { ampId: 'a1', version: 3, outputClass: 'push-pull', sockets: rows } })
  })

  it.each([
    ['81,6', 81.6],
    ['81.6', 81.6],
    [' 74 ', 74],
    ['', null],
  ])('reads a half primary of “%s” as %s', (typed, ohms) => {
    const result = read({ 'sockets.2.halfPrimaryOhms': typed })
    expect(result.ok && result.value.sockets[2]?.halfPrimaryOhms).toBe(ohms)
  })

  it.each([
    ['cathodeOhms', '0,5', 'V3 cathode resistor: 0.5 Ω is too low. It must be between 1 and 10000 Ω.'],
    ['cathodeOhms', '0', 'V3 cathode resistor: 0 Ω is too low. It must be between 1 and 10000 Ω.'],
    ['senseOhms', '220', 'V3 sense resistor: 220 Ω is too high. It must be between 0.1 and 100 Ω.'],
    ['screenOhms', '1k', 'V3 screen resistor: “1k” is not a number. Type a number between 1 and 20000 Ω.'],
    ['halfPrimaryOhms', '2001', 'V3 half primary: 2001 Ω is too high. It must be between 1 and 2000 Ω.'],
    ['cathodeSharedBy', '1.5', 'V3 number sharing the cathode resistor: 1.5 must be a whole number.'],
    ['across', '101', 'V3 place across: 101 is too high. It must be between 0 and 100.'],
    [
      'role',
      'mixer',
      `V3 role: “mixer” is not one of preamp, phase-inverter, driver, reverb, tremolo, output, rectifier, regulator, other.`,
    ],
  ])('refuses %s of “%s”, naming socket, value and bound', (name, typed, sentence) => {
    const over: Record<string, string> = name === 'across' ? { 'sockets.2.depth': '50' } : {}
    expect(faultsOf({ ...over, [`sockets.2.${name}`]: typed })).toEqual({ [`sockets.2.${name}`]: sentence })
  })

  it('refuses a position that stands twice at the second of the two', () => {
    const sentence = 'Position v1 stands twice on the sheet. Every socket needs a position of its own.'
    expect(faultsOf({ 'sockets.3.position': 'v1' })).toEqual({ 'sockets.3.position': sentence })
  })

  it('refuses an empty position, and half a place', () => {
    expect(faultsOf({ 'sockets.1.position': ' ' })).toEqual({
      'sockets.1.position': 'Position of socket 2 is empty. Please fill it in.',
    })
    expect(faultsOf({ 'sockets.1.across': '20' })).toEqual({
      'sockets.1.depth': 'V2: its place needs both numbers, across and deep, or neither.',
    })
  })

  it('reads a sheet without any socket', () => {
    const { ampId, version, outputClass } = values as Record<string, string>
    const result = readValues(sheetSchema, {
      ampId: ampId ?? '',
      version: version ?? '',
      outputClass: outputClass ?? '',
    })
    expect(result.ok && result.value.sockets).toEqual([])
  })
})
