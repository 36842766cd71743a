/** The answer as it is drawn, on an invented stage whose truth is known (tests/domain/circuit/amp/read-amp.ts). */
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import type { StockedAnswers } from '@/app/_components/what-if/asked-change'
import { whatIfAnswer } from '@/app/_components/what-if/what-if-answer'
import { whatIfTyped } from '@/app/_components/what-if/what-if-typed'
import { whatIf } from '@/lib/domain/circuit/change/what-if'
import { untestedTube } from '@/lib/domain/model/individual-tube'
import { typeModel } from '@/lib/domain/model/type-model'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { ohms, volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { circuitOf, trueStage } from '@/tests/domain/circuit/amp/read-amp'
import { given } from '@/tests/domain/circuit/solved'

const words = wordsFor('UK')
const gridSupplied = circuitOf(trueStage())
const cathodeBiased = circuitOf(
  trueStage(
    {
      gridSupplies: [],
      biasResistors: [{ id: 'shared', resistance: ohms(270) }],
      supply: { ...trueStage().supply, openCircuit: volts(380) },
    },
    { gridSupply: null, biasResistor: 'shared', senseResistance: ohms(0) },
  ),
)

const answer = (typed: Record<string, string>, circuit = gridSupplied, stocked: StockedAnswers = {}) =>
  whatIfAnswer({ circuit, typed: whatIfTyped(Object.entries(typed)), stocked, load: null, words })

/** As it is read: tags become spaces. */
const text = (typed: Record<string, string>, circuit = gridSupplied, stocked: StockedAnswers = {}) =>
  renderToStaticMarkup(answer(typed, circuit, stocked).view)
    .replace(/<[^>]+>/g, ' ')
    .replace(/&#x27;/g, "'")
    .replace(/\s+/g, ' ')

describe('what is typed', () => {
  it('is taken from the boxes of the panel alone, trimmed, and at most 40 letters of it', () => {
    const asked = whatIfTyped([
      ['type', ' EL34 '],
      ['grid', ''],
      ['mark.V4', 'T-0001'],
      ['group', 'output'],
      ['wall', 'x'.repeat(99)],
      ['pulled', ['V4', 'V5']],
    ])
    expect(asked).toEqual({ type: 'EL34', 'mark.V4': 'T-0001', wall: 'x'.repeat(40) })
  })

  it('nothing: the stage as it was read, and how to set it', () => {
    const shown = text({})
    expect(shown).toContain('Nothing is changed yet')
    expect(shown).toContain('To the middle of the window')
    expect(shown).not.toContain('then')
  })

  it.each([
    ['grid', '48', 'Grid supply: 48 V is above chassis. Type it with its minus.'],
    ['grid', '-400', 'Grid supply: -400 V is too low. It must be between −300 and 0 V.'],
    ['grid', '-4o', 'Grid supply: “-4o” is not a number. Type a number between −300 and 0 V.'],
    ['wall', '12', 'Wall voltage: 12 V is too low. It must be between 60 and 280 V.'],
    ['wall', '100', '100 V at the wall is outside 115 V to 345 V, where heaters and supplies can be reckoned with.'],
    ['type', 'EL99', 'EL99 is not known here.'],
    ['type', '12AX7', '12AX7 is no output valve.'],
    ['rectifier', '5XX9', '5XX9 is no rectifier whose voltage drop is known here.'],
    ['pulled', 'V9', 'This group has no socket V9.'],
    ['cathode', '270', 'No cathode resistor sets the idle of this group: its grid volts do.'],
  ])('%s “%s” is refused beside its box, and nothing is answered', (box, typed, sentence) => {
    expect(answer({ [box]: typed }).faults).toEqual({ [box]: sentence })
    expect(text({ [box]: typed })).toContain('A box above needs another look')
  })

  it('a grid supply is refused where a cathode resistor sets the idle', () => {
    expect(answer({ grid: '-20' }, cathodeBiased).faults).toHaveProperty('grid')
  })

  it('reads a comma, and a minus as it is printed', () => {
    expect(text({ grid: '\u221248,5' })).toContain('the grid supply at −48.5 V (at 230 V mains)')
  })
})

describe('the answer', () => {
  it('shows of every socket what the circuit gives: −50 V on the grids is colder', () => {
    const found = given(whatIf(gridSupplied, { gridVolts: -50 }))
    const shown = text({ grid: '-50' })
    for (const { now, changed } of found.sockets) {
      if (!changed) throw new Error('pulled')
      expect(changed.plateAmps.value).toBeLessThan(now.plateAmps.value)
      for (const idle of [now, changed]) expect(shown).toContain(`${(1000 * idle.plateAmps.value).toFixed(1)} mA`)
      expect(shown).toContain(`${changed.platePercent?.value.toFixed(0)} %`)
    }
    expect(shown).toContain('Computed, not measured')
  })

  it('says that the adjustment does not reach a setting outside its range, and what its end gives', () => {
    const narrow = circuitOf(trueStage(), {
      facts: { ...gridSupplied.facts, gridColdestVolts: -30, gridHottestVolts: -20 },
    })
    expect(text({}, narrow)).toMatch(/The adjustment does not reach it \(−30\.0 V to −20\.0 V\)\. At its end, −30\.0 V/)
  })

  it('a pulled valve leaves an empty socket, and the other is told not to be driven', () => {
    const shown = text({ pulled: 'V4' })
    expect(shown).toContain('V4 pulled')
    expect(shown).toContain('Pulled: this socket is empty.')
    expect(shown).toContain('never driven')
  })

  it('a larger cathode resistor runs colder, and E24 values stand on both sides of the target', () => {
    const shown = text({ cathode: '390' }, cathodeBiased)
    expect(shown).toContain('a cathode resistor of 390 Ω')
    expect(shown).toMatch(/Of the E24 series .+ gives .+ W, .+ gives .+ W\./)
    const found = given(whatIf(cathodeBiased, { cathodeOhms: 390 }))
    for (const { now, changed } of found.sockets) expect(changed?.plateAmps.value).toBeLessThan(now.plateAmps.value)
  })

  it('everything at once: type, wall, rectifier', () => {
    expect(text({ type: 'KT88', wall: '240', rectifier: '5U4GB' })).toContain(
      'Then: with an average KT88 in V4 and V5; 240 V at the wall; 5U4GB as rectifier.',
    )
  })
})

describe('a valve by its mark', () => {
  const variant = findTubeType('6L6GC', HANDBOOK_ONLY)
  if (!variant) throw new Error('6L6GC')
  const own = { kind: 'individual', variant, tube: untestedTube(given(typeModel('6L6'))), mark: 'T-0036' } as const
  const stocked: StockedAnswers = {
    't 36': { ok: true, value: own },
    'T-0036': { ok: true, value: own },
    'T-9': { ok: false, fault: 'The stock book has no valve marked T-9.' },
  }

  it('sits in its socket alone, the others keep theirs', () => {
    expect(text({ 'mark.V5': 'T-0036' }, gridSupplied, stocked)).toContain('Then: with T-0036 in V5.')
  })

  it('goes together with a type for the other sockets', () => {
    expect(text({ type: 'KT88', 'mark.V5': 'T-0036' }, gridSupplied, stocked)).toContain(
      'an average KT88 in V4; T-0036 in V5',
    )
  })

  it('cannot sit in two sockets, however it is written', () => {
    expect(answer({ 'mark.V4': 'T-0036', 'mark.V5': 't 36' }, gridSupplied, stocked).faults).toEqual({
      'mark.V5': 'T-0036 is one valve: it sits in V4 already.',
    })
  })

  it('waits for the stock book, and says what the book says', () => {
    expect(answer({ 'mark.V4': 'T-0500' }, gridSupplied, stocked)).toMatchObject({ waiting: true, faults: {} })
    expect(answer({ 'mark.V4': 'T-9' }, gridSupplied, stocked).faults).toEqual({
      'mark.V4': 'The stock book has no valve marked T-9.',
    })
  })
})
