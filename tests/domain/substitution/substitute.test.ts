import { describe, expect, test } from 'vitest'
import { issueOf } from '@/lib/domain/substitution/checks/issue'
import { substitutesFor } from '@/lib/domain/substitution/substitutes'
import { amps, ohms, volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { ask, of, outputSocket, plainSocket, RULES, weights } from './socket-fixture'

describe('pins', () => {
  // Base drawings 7AC and 8ET (handbook): g3 of the EL34 is pin 1, where a 6L6 has nothing; its cathode is pin 8.
  test('EL34 in a socket wired for 6L6GC: link pin 1 to pin 8; the other way round the link does no harm', () => {
    const change = of(ask('EL34', outputSocket('6L6GC')), 'pins').find(({ weight }) => weight === 'change')
    expect(change?.sentence).toMatch(/Pin 1 .*pin 8/)
    expect(weights(ask('6L6GC', outputSocket('EL34')), 'pins')).not.toContain('change')
    expect(weights(ask('6L6GC', outputSocket('EL34')), 'pins')).not.toContain('no')
  })

  // Base drawing 8KQ (handbook): grid on pin 6, cathode on pin 5, screens on 4 and 8.
  test('7591 looks like a 6L6 and is not: three pins differ, each is named', () => {
    const refused = of(ask('7591', outputSocket('6L6GC')), 'pins').filter(({ weight }) => weight === 'no')
    expect(refused.map(({ sentence }) => /Pin (\d)/.exec(sentence)?.[1])).toEqual(['5', '6', '8'])
    expect(ask('7591', outputSocket('6L6GC')).answer).toBe('no')
  })

  test('noval look-alikes: EF86, EL84 and EZ81 are no 12AX7, nor is an octal tube', () => {
    for (const other of ['EF86', 'EL84', 'EZ81', '6SN7GTB']) {
      expect(ask(other, plainSocket('12AX7')).answer, other).toBe('no')
    }
  })

  test('pins that nobody knows are not guessed: 6973 for EL84 cannot be said', () => {
    expect(weights(ask('6973', outputSocket('EL84')), 'pins')).toEqual(['cannot-say'])
  })
})

describe('heater', () => {
  // Handbook figures, also common practice: 6L6GC 0.9 A, EL34 1.5 A, KT88 1.6 A.
  test('EL34 for 6L6GC draws 0.6 A more each: from a 5 A winding with 3.3 A drawn a pair goes, from 4 A it does not', () => {
    const winding = (limit: number) =>
      outputSocket('6L6GC', { heaterWinding: { limit: amps(limit), drawn: amps(3.3) } })
    expect(weights(ask('EL34', winding(5)), 'heater')).toEqual(['note'])
    const [over] = of(ask('EL34', winding(4)), 'heater')
    expect(over?.weight).toBe('change')
    expect(over?.sentence).toMatch(/4 A and would carry 4.5 A/)
  })

  test('with no winding noted it cannot be said; a tube that draws less is no question', () => {
    expect(weights(ask('EL34', outputSocket('6L6GC')), 'heater')).toEqual(['cannot-say'])
    expect(weights(ask('6L6GC', outputSocket('EL34')), 'heater')).toEqual(['fits'])
  })

  test('6EU7 has no centre tap: it does not go into a socket that feeds 12.6 V', () => {
    expect(weights(ask('6EU7', plainSocket('12AX7')), 'heater')).toEqual(['no'])
  })
})

describe('ratings belong to the variant', () => {
  // 6V6/6V6GT 315 V design-centre, 6V6GTA 350 V design-maximum: 6V6GTA sheet, and common practice.
  test('at 330 V the 6V6GT is over its print, the 6V6GTA is not', () => {
    const socket = outputSocket('6V6GT', { plateToCathode: volts(330), screenToCathode: volts(300) })
    expect(weights(ask('6V6GT', socket), 'plate volts')).toEqual(['no'])
    expect(weights(ask('6V6GTA', socket), 'plate volts')).toEqual(['fits'])
  })

  test('on request the print is a caution, and the watts are still judged', () => {
    const socket = outputSocket('6V6GT', { plateToCathode: volts(330), screenToCathode: volts(300) })
    const asked = ask('6V6GT', socket, { allowOverPrintedRating: true })
    expect(weights(asked, 'plate volts')).toEqual(['note'])
    expect(of(asked, 'idle')).toHaveLength(1)
  })

  // 6L6G 19 W, 6L6GC 30 W: handbook.
  test('6L6G and 6L6GC draw alike at one bias, which is 19 W against 30 W: the earlier one needs a colder grid', () => {
    const socket = outputSocket('6L6GC', { plateToCathode: volts(350), screenToCathode: volts(260) })
    const share = (type: string) =>
      Number(/draw .*?, (\d+) % of its rating/.exec(of(ask(type, socket), 'idle')[0]?.sentence ?? '')?.[1])
    expect(share('6L6G') / share('6L6GC')).toBeCloseTo(30 / 19, 0)
  })

  test('what was not measured cannot be said', () => {
    const socket = outputSocket('6L6GC', { plateToCathode: null, screenToCathode: null })
    const asked = ask('6L6GC', socket)
    expect(asked.answer).toBe('cannot-say')
    expect(weights(asked, 'plate volts')).toEqual(['cannot-say'])
    expect(weights(asked, 'idle')).toEqual(['cannot-say'])
  })
})

describe('later may replace earlier, not the other way (RETMA type designation scheme)', () => {
  test.each([
    ['6V6GT', 0],
    ['6V6GTA', 1],
    ['6SN7GTB', 2],
    ['6L6GC', 3],
    ['5U4GB', 2],
    ['12AX7A', 1],
    ['5881', 0],
    ['EL34', 0],
  ])('%s is issue %i', (designation, issue) => expect(issueOf(designation)).toBe(issue))

  test('6L6GC for 6L6G fits, 6L6G for 6L6GC does not as such; 5U4GB likewise', () => {
    expect(weights(ask('6L6GC', outputSocket('6L6G')), 'issue')).toEqual(['fits'])
    expect(weights(ask('6L6G', outputSocket('6L6GC')), 'issue')).toEqual(['adjust'])
    expect(weights(ask('5U4GB', plainSocket('5U4G')), 'issue')).toEqual(['fits'])
    expect(weights(ask('5U4G', plainSocket('5U4GB')), 'issue')).toEqual(['adjust'])
  })

  test('another scheme says nothing of issues: 5881 for 6L6GC', () => {
    expect(of(ask('5881', outputSocket('6L6GC')), 'issue')).toEqual([])
  })
})

describe('idle', () => {
  test('out of reach of the adjustment is a change, with both figures', () => {
    const bias = { kind: 'grid-supplied', now: volts(-42), coldest: volts(-46), hottest: volts(-38) } as const
    const [found] = of(ask('KT88', outputSocket('6L6GC', { bias })), 'idle')
    expect(found?.weight).toBe('change')
    expect(found?.sentence).toMatch(/ends at −46.0 V/)
  })

  test('a cathode resistor that is too small is named with the one of the E24 series that would do', () => {
    const bias = { kind: 'cathode-resistor', resistance: ohms(130), sharedBy: 2 } as const
    const asked = ask('6V6GT', outputSocket('EL34', { bias, plateToCathode: volts(300), screenToCathode: volts(280) }))
    const [found] = of(asked, 'idle')
    expect(found?.weight).toBe('change')
    const resistor = Number(/A resistor of (\d+) Ω/.exec(found?.sentence ?? '')?.[1])
    expect(resistor).toBeGreaterThan(200)
    const again = { kind: 'cathode-resistor', resistance: ohms(resistor), sharedBy: 2 } as const
    const there = outputSocket('EL34', { bias: again, plateToCathode: volts(300), screenToCathode: volts(280) })
    const share = Number(/, (\d+) % of its rating/.exec(of(ask('6V6GT', there), 'idle')[0]?.sentence ?? '')?.[1])
    expect(Math.abs(share - 65)).toBeLessThanOrEqual(3)
  })

  test('the grid voltage it asks for is the one it then idles at', () => {
    const [first] = of(ask('EL34', outputSocket('6L6GC')), 'idle')
    const needed = -Number(/needs about −([\d.]+) V/.exec(first?.sentence ?? '')?.[1])
    const bias = { kind: 'grid-supplied', now: volts(needed), coldest: null, hottest: null } as const
    expect(weights(ask('EL34', outputSocket('6L6GC', { bias })), 'idle')).toEqual(['fits'])
  })
})

describe('rectifiers', () => {
  // Order of supply volts from high to low: 5AR4, 5V4, 5U4, 5R4, 5Y3. Common practice, no source.
  test('each further one in the trade’s order drops more at 90 mA', () => {
    const socket = plainSocket('5AR4', { supplyCurrent: amps(0.09), reservoirMicrofarads: 4 })
    const drops = ['5V4G', '5U4G', '5R4GY', '5Y3GT'].map((type) =>
      Number(
        /drops about (\d+) V/.exec(
          of(ask(type, socket), 'rectifier').find(({ sentence }) => /drops/.test(sentence))?.sentence ?? '',
        )?.[1],
      ),
    )
    expect(drops).toEqual([...drops].sort((a, b) => a - b))
    expect(new Set(drops).size).toBe(4)
  })

  // Reservoir limits: 5Y3GT 20 µF, 5U4G 40 µF (handbook).
  test('a reservoir above the print is a change; more current than the print is a refusal', () => {
    const socket = plainSocket('5AR4', { supplyCurrent: amps(0.15), reservoirMicrofarads: 32 })
    expect(of(ask('5Y3GT', socket), 'rectifier').map(({ weight }) => weight)).toEqual(
      expect.arrayContaining(['change', 'no']),
    )
    expect(of(ask('5U4G', socket), 'rectifier').map(({ weight }) => weight)).not.toContain('no')
  })

  test('directly heated after indirectly heated: full volts before the rest is warm', () => {
    const told = (from: string, to: string) =>
      of(ask(to, plainSocket(from)), 'rectifier').some(({ sentence }) => /directly heated/.test(sentence))
    expect(told('5AR4', '5U4G')).toBe(true)
    expect(told('5U4G', '5AR4')).toBe(false)
  })
})

describe('12AX7 family by gain', () => {
  // Amplification factors 100, 70, 60, 20 (handbook).
  test.each([
    ['12AT7', 60],
    ['12AU7', 20],
    ['5751', 70],
  ])('%s has %i against 100', (type, mu) => {
    const [found] = of(ask(type, plainSocket('12AX7')), 'gain')
    expect(found?.weight).toBe('adjust')
    expect(found?.sentence).toContain(`Amplification factor ${mu}, against 100`)
  })

  test('ECC83 is the same tube and drops in; 12DW7 has one unlike unit', () => {
    expect(ask('ECC83', plainSocket('12AX7')).answer).toBe('drop-in')
    expect(weights(ask('12DW7', plainSocket('12AX7')), 'gain')).toContain('adjust')
  })
})

test('a grid leak above the print counts against a tighter type only', () => {
  const socket = (made: string) => outputSocket(made, { gridLeak: ohms(220_000) })
  expect(weights(ask('6L6GC', socket('EL34')), 'grid leak')).toEqual(['change'])
  expect(weights(ask('6L6GC', socket('6L6GC')), 'grid leak')).toEqual(['note'])
  expect(weights(ask('EL34', socket('6L6GC')), 'grid leak')).toEqual(['fits'])
})

test('the list holds the socket’s own kind and base, best answers first, and says valve where the shop does', () => {
  const all = substitutesFor(outputSocket('6L6GC'), { ...RULES, words: wordsFor('UK') })
  const names = all.map(({ proposed }) => proposed.designation)
  expect(names).toContain('KT66')
  expect(names).not.toContain('EL84')
  expect(all.findIndex(({ answer }) => answer === 'no')).toBeGreaterThan(
    all.findLastIndex(({ answer }) => answer !== 'no'),
  )
  const sentences = all.flatMap(({ findings }) => findings.map(({ sentence }) => sentence)).join(' ')
  expect(sentences).toContain('anode')
  expect(sentences).not.toMatch(/\btube\b|(?<!beam )\bplates?\b/)
})
