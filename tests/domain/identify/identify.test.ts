/**
 * Bottles on the bench. Facts held against: the RETMA scheme (G, GT, GT/G, A to C, W, Y); the base and pins of
 * handbook types; the Signal Corps and CV numbers that the handbook carries; years of introduction printed on
 * type pages (6V6 1937, EL34 1953). The rest is common practice and says so in its source.
 */
import { describe, expect, test } from 'vitest'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { type Choices, candidate, leader, sentences, told } from './told'

describe('envelope by suffix', () => {
  test.each(['6V6', '6L6', '6F6', '6J5', '6SC7'])('%s without a suffix in a metal can is consistent', (print) => {
    const found = told({ print, choices: { bulb: 'metal', base: 'octal' } })
    expect([leader(found), found.state]).toEqual([print, 'consistent'])
  })

  test('print says GT, a glass version, but a metal can has none: contradictory, and the metal 6V6 leads', () => {
    const found = told({ print: '6V6GT', choices: { bulb: 'metal' } })
    expect(found.state).toBe('contradictory')
    expect(sentences(found)).toMatch(/says 6V6GT: GT is glass.*But seen, bulb: metal can/)
    expect(found.contradictions[0]?.source).toBe('retma')
    expect(leader(found)).toBe('6V6')
  })

  test('print says G, seen a straight bulb: contradictory; in a shouldered one: consistent', () => {
    expect(told({ print: '6V6G', choices: { bulb: 'T-9' } }).state).toBe('contradictory')
    expect(told({ print: '6V6G', choices: { bulb: 'ST-14' } }).state).toBe('consistent')
  })

  test('a 6L6GC, 6L6GB or 5U4GB is no shouldered G: a straight bulb fits', () => {
    for (const print of ['6L6GC', '6L6GB', '5U4GB'])
      expect(told({ print, choices: { bulb: 'T-12' } }).state).toBe('consistent')
  })

  test('a bare 6V6 on glass is left open: no contradiction, the glass versions lead, nothing is confirmed', () => {
    const found = told({ print: '6V6', choices: { bulb: 'T-9' } })
    expect([found.state, found.contradictions]).toEqual(['unknown', []])
    expect(['6V6GT', '6V6GTA']).toContain(leader(found))
    expect(found.ranked.map(({ version }) => version?.designation)).not.toContain('6V6')
    expect(found.remarks.map(({ sentence }) => sentence).join()).toContain('often left off')
  })

  test('GT replaces G: both are glass of one type, and the bulb alone tells them apart', () => {
    expect(
      leader(told({ choices: { base: 'octal', bulb: 'ST-12', heaterPins: '2-7', plates: 'one' }, skipped: ['print'] })),
    ).toBe('6K6G')
    const straight = told({ print: '6K6', choices: { bulb: 'T-9' } })
    expect(leader(straight)).toBe('6K6GT')
    expect(
      straight.ranked[0]?.reasonsFor
        .flatMap(({ why }) => why)
        .map(({ sentence }) => sentence)
        .join(),
    ).toContain('it replaced the G')
  })

  test('6V6GT/G is a version of its own and straight', () => {
    const found = told({ print: '6V6GT/G', choices: { bulb: 'T-9' } })
    expect([leader(found), found.state]).toEqual(['6V6GT/G', 'consistent'])
    expect(told({ print: '6V6GT/G', choices: { bulb: 'ST-14' } }).state).toBe('contradictory')
  })
})

describe('base by suffix', () => {
  test('Y is the brown base: 5R4GY with a brown base is consistent, with a black one contradictory', () => {
    expect(told({ print: '5R4GY', choices: { baseMaterial: 'brown' } }).state).toBe('consistent')
    const black = told({ print: '5R4GY', choices: { baseMaterial: 'black' } })
    expect(black.state).toBe('contradictory')
    expect(sentences(black)).toContain('brown, heat-resistant')
  })

  test('a brown base on a bottle whose print is gone moves the 6V6GTY ahead of the 6V6GT', () => {
    const base = { bulb: 'T-9', heaterPins: '2-7', plates: 'one', base: 'octal' }
    const share = (baseMaterial: string, designation: string) =>
      candidate(told({ choices: { ...base, baseMaterial }, skipped: ['print'] }), designation).share
    expect(share('brown', '6V6GTY')).toBeGreaterThan(share('brown', '6V6GT'))
    expect(share('black', '6V6GT')).toBeGreaterThan(0.05)
    const black = told({ choices: { ...base, baseMaterial: 'black' }, skipped: ['print'] })
    expect(black.ranked.map(({ version }) => version?.designation)).not.toContain('6V6GTY')
  })

  test('a suffix that no list has is built by the rules: 6SN7GTY', () => {
    const found = told({ print: '6SN7GTY', choices: { baseMaterial: 'brown', bulb: 'T-9' } })
    expect(found.ranked[0]?.version).toMatchObject({
      designation: '6SN7GTY',
      typeId: '6SN7GTB',
      baseLetter: 'Y',
      envelope: 'GT',
    })
    expect(found.state).toBe('consistent')
  })

  test('Z and Y of a US number bring no European type: 5Y3GT, 5Z3', () => {
    expect(leader(told({ print: '5Y3GT' }))).toBe('5Y3GT')
    expect(told({ print: '5Z3' }).ranked[0]?.version).toBeNull()
    expect(
      told({ print: '5Z3' })
        .remarks.map(({ sentence }) => sentence)
        .join(),
    ).toContain('similar to 5U4G')
  })
})

describe('issue letters', () => {
  test('design-maximum variants by suffix: 6V6GTA 14 W design-maximum, 6V6GT 12 W design-centre, never swapped', () => {
    const rated = (print: string) => {
      const designation = leader(told({ print, choices: { bulb: 'T-9' } })) ?? ''
      const ratings = findTubeType(designation, HANDBOOK_ONLY)?.ratings
      return [ratings?.system, ratings?.plateWatts?.value]
    }
    expect(rated('6V6GTA')).toEqual(['design-maximum', 14])
    expect(rated('6V6GT')).toEqual(['design-centre', 12])
  })

  // A magazine article on tube types, December 2000: the step from design-centre to design-maximum is 10 % there.
  test('7189 to 7189A is exactly 1.10 in volts and watts; 6V6GT to 6V6GTA is no clean 10 %: 1.17 in watts', () => {
    const limits = (print: string) => findTubeType(print, HANDBOOK_ONLY)?.ratings
    const step = (plain: string, later: string, name: 'plateVolts' | 'plateWatts') =>
      (limits(later)?.[name]?.value ?? Number.NaN) / (limits(plain)?.[name]?.value ?? Number.NaN)
    expect(step('7189', '7189A', 'plateVolts')).toBeCloseTo(1.1, 10)
    expect(step('7189', '7189A', 'plateWatts')).toBeCloseTo(1.1, 10)
    expect(step('6V6GT', '6V6GTA', 'plateWatts')).toBeCloseTo(14 / 12, 10)
  })

  test.each([
    ['6V6GTA', '6V6GT'],
    ['7189A', '7189'],
    ['6AQ5A', '6AQ5'],
  ])('%s is rated design-maximum and %s design-centre', (later, plain) => {
    expect(findTubeType(later, HANDBOOK_ONLY)?.ratings?.system).toBe('design-maximum')
    expect(findTubeType(plain, HANDBOOK_ONLY)?.ratings?.system).toBe('design-centre')
  })

  test('6L6GC of 1952 cannot be: from memory not made before about 1957', () => {
    const found = told({ print: '6L6GC', date: '52-14' })
    expect(found.state).toBe('contradictory')
    expect(sentences(found)).toMatch(/not made before about 1957 \(from memory\).*1952/)
  })

  test('a later letter does not name the earlier: print 6SN7GTB leaves the 6SN7GT far behind', () => {
    const found = told({ print: '6SN7GTB' })
    expect(candidate(found, '6SN7GTB').share).toBeGreaterThan(0.9)
  })
})

describe('service versions', () => {
  test.each([
    ['VT-107', '6V6', 'metal'],
    ['VT-107A', '6V6GT', 'T-9'],
    ['VT-107B', '6V6G', 'ST-14'],
  ])('%s is the %s: the letter marks the envelope', (print, designation, bulb) => {
    const found = told({ print, choices: { bulb } })
    expect([leader(found), found.state]).toEqual([designation, 'consistent'])
    expect(found.ranked[0]?.services[0]).toMatchObject({ service: 'signal-corps', number: print })
    expect(found.ranked[0]?.years.at(-1)?.[1]).toBeLessThanOrEqual(1946)
  })

  test('print 6V6GT beside code VT-107B: two versions, named as a contradiction', () => {
    const found = told({ print: '6V6GT', codes: 'VT-107B' })
    expect(sentences(found)).toMatch(/says 6V6GT, the codes say VT-107B, which is the 6V6G: not the same version/)
  })

  test('VT75 alone names nothing known, VT75 (RAF) the KT66', () => {
    expect(told({ print: 'VT75' }).ranked[0]?.version).toBeNull()
    const raf = told({ print: 'VT75 (RAF)' })
    expect([leader(raf), raf.ranked[0]?.services[0]?.service]).toEqual(['KT66', 'british-service'])
  })

  test('CV511 and NATO 5960-99-000-0511 are the 6V6GT; CV4004 a special-quality ECC83', () => {
    expect([leader(told({ print: 'CV511' })), leader(told({ print: '5960-99-000-0511' }))]).toEqual(['6V6GT', '6V6GT'])
    expect(told({ print: 'CV4004' }).ranked[0]?.version).toMatchObject({
      typeId: '12AX7',
      of: 'ECC83',
      standing: 'special-quality',
    })
  })

  test('JAN-QX-5881: JAN leads the services; whose QX is, only the shop’s own list says', () => {
    const found = told({ print: 'JAN-QX-5881' })
    expect([leader(found), found.ranked[0]?.services[0]?.service]).toEqual(['5881', 'jan'])
    expect(found.remarks.map(({ sentence }) => sentence).join()).toContain('own list does not say')
    const makers = [{ name: 'Quarrel Lane Valve Works', sourceCodes: ['199'], factoryMarks: ['Q'], janLetters: ['QX'] }]
    const known = told({ print: 'JAN-QX-5881', codes: '199', date: 'Q0D' }, makers)
    expect(known.remarks.filter(({ sentence }) => sentence.endsWith('Quarrel Lane Valve Works.'))).toHaveLength(3)
  })

  test('JAN alone in the codes is a service mark, not an unknown number', () => {
    const found = told({ print: '6V6GT', codes: 'JAN' })
    expect([leader(found), found.ranked[0]?.services[0]?.service]).toEqual(['6V6GT', 'jan'])
  })
})

describe('European, British and Cyrillic numbers', () => {
  test('EL34 with a maker’s letters is an EL34', () => {
    const found = told({ print: 'EL34-QX', choices: { base: 'octal', bulb: 'T-12' } })
    expect([leader(found), found.state]).toEqual(['EL34', 'consistent'])
  })

  test('EL34 says octal: a noval base is a contradiction', () => {
    expect(told({ print: 'EL34', choices: { base: 'noval' } }).state).toBe('contradictory')
    expect(told({ print: 'EL84', choices: { base: 'noval' } }).state).toBe('consistent')
  })

  test('6П6С is known as a 6V6GT, in Latin letters too; 6П3С is only near one, and nothing is guessed', () => {
    expect([leader(told({ print: '6П6С' })), leader(told({ print: '6P6S' }))]).toEqual(['6П6С', '6П6С'])
    expect(told({ print: '6П6С' }).ranked[0]?.version?.of).toBe('6V6GT')
    expect(told({ print: '6П3С' }).ranked[0]?.version).toBeNull()
  })

  test('5Ц4С is only listed as similar to the 5Y3GT: said, not taken for it', () => {
    const found = told({ print: '5Ц4С' })
    expect(found.ranked[0]?.version).toBeNull()
    expect(found.remarks.map(({ sentence }) => sentence).join()).toContain('similar to 5Y3GT')
  })
})

describe('years', () => {
  test('6V6 with 188-5-32: 1937 or later cuts nothing, the figure leaves a set', () => {
    const { years } = candidate(told({ print: '6V6', choices: { bulb: 'metal' }, date: '188-5-32' }), '6V6')
    expect(years).toEqual([1945, 1955, 1965, 1975, 1985, 1995].map((year) => [year, year]))
  })

  test('EL34 with year figure 5 and a D getter: introduction (1953) cuts 1945, the getter all after 1955', () => {
    const { years } = candidate(told({ print: 'EL34', date: '5-32', choices: { getterShape: 'd' } }), 'EL34')
    expect(years).toEqual([[1955, 1955]])
  })

  test('a Signal Corps number cuts the same figure to 1945', () => {
    const { years } = candidate(told({ print: 'VT-107A', date: '5-32' }), '6V6GT')
    expect(years).toEqual([[1945, 1945]])
  })

  test('I61 over B0D3 on an ECC83: 1960, and the etched line names the type by itself', () => {
    const found = told({ date: 'I61 B0D3', choices: { base: 'noval' }, skipped: ['print'] })
    expect(leader(found)).toBe('ECC83')
    expect(candidate(found, 'ECC83').years).toEqual([[1960, 1960]])
  })

  test('Xf2 over B2D4 names an EL34 by itself, and says it knows the code from memory', () => {
    const found = told({ date: 'Xf2 B2D4', skipped: ['print'] })
    expect(['EL34', '6CA7']).toContain(leader(found))
    expect(found.codes.types[0]).toMatchObject({ source: 'memory' })
    const beside = told({ print: 'KT66', date: 'Xf2 B2D4' })
    expect(sentences(beside)).toMatch(/says KT66, the etched code is of the EL34 \(from memory\): not the same version/)
  })

  test.each([
    [{ print: 'Xf2' }, { date: 'Xf2' }],
    [{ print: 'xf2 b2d4' }, { date: 'Xf2 B2D4' }],
    [{ print: 'I61', date: 'B0D3' }, { date: 'I61 B0D3' }],
  ])('%j, written where the number belongs, is ranked like %j in its own box', (print, date) => {
    const [found, inItsBox] = [told(print), told({ ...date, skipped: ['print'] })]
    expect(found.codes.types.length).toBe(1)
    expect(found.ranked).toEqual(inItsBox.ranked)
    expect(found.remarks).toEqual(inItsBox.remarks)
    expect(found.next?.key).not.toBe('print')
  })

  test('a number that is one stays one: EL34 beside the etched I61 is a contradiction, 6L6GC alone is no code', () => {
    expect(sentences(told({ print: 'EL34', date: 'I61' }))).toMatch(/says EL34, the etched code is of the ECC83/)
    expect(told({ print: '6L6GC' }).codes.types).toEqual([])
  })

  test('an etched code of a type that is not known here is said to be one: GA1, the ECC88', () => {
    const found = told({ date: 'GA1' })
    expect(found.remarks.map(({ sentence }) => sentence)).toContain(
      'The etched code is of the ECC88, a type that is not known here.',
    )
    expect(found.contradictions).toEqual([])
  })

  // A one-figure year leaves the decade open; what is seen settles it. All of these hints are common practice.
  test.each([
    ['6V6G', '6-20', { getterShape: 'cup' }, [1946]],
    ['6L6GC', '9-20', { getterShape: 'disc' }, [1969, 1979, 1989, 1999]],
  ] as const)('%s with the code %s and %j: %j', (print, date, choices, years) => {
    expect(candidate(told({ print, date, choices }), print).years).toEqual(years.map((year) => [year, year]))
  })

  test('a metal collar puts an EL34 into the 1950s', () => {
    const { years } = candidate(told({ print: 'EL34', choices: { baseMaterial: 'collar' } }), 'EL34')
    expect(years[0]?.[0]).toBe(1953)
    expect(years.at(-1)?.[1]).toBeLessThanOrEqual(1961)
  })

  test('a ring getter on a bottle whose code says 1948 does not go well with it, and nothing is called proof', () => {
    const early = told({ print: '6V6GT', date: '48-10', choices: { getterShape: 'ring' } })
    const fitting = told({ print: '6V6GT', date: '58-10', choices: { getterShape: 'ring' } })
    const weight = (found: typeof early) =>
      candidate(found, '6V6GT')
        .yearHints.concat(candidate(found, '6V6GT').reasonsAgainst)
        .reduce((sum, one) => sum + one.weight, 0)
    expect(weight(early)).toBeLessThan(weight(fitting))
    expect(early.state).not.toBe('contradictory')
  })
})

describe('what the bottle tells of itself', () => {
  test('a chalk-white getter means air: a caution, no identity', () => {
    const found = told({ print: 'EL84', choices: { flash: 'white' } })
    expect(found.remarks[0]?.sentence).toContain('dead')
    expect(candidate(found, 'EL84').share).toBeCloseTo(candidate(told({ print: 'EL84' }), 'EL84').share, 10)
  })

  test('a dark edge of the getter shows no use; two getters say nothing of the years', () => {
    expect(
      told({ choices: { flash: 'dark' } })
        .remarks.map(({ sentence }) => sentence)
        .join(),
    ).toContain('shows no use')
    const years = (choices: Choices) => candidate(told({ print: 'EL34', choices }), 'EL34').years
    expect(years({ getterPlace: 'two' })).toEqual(years({}))
  })

  test('white ceramic goes with X, and not with Y', () => {
    expect(told({ print: '6V6GTX', choices: { baseMaterial: 'ceramic' } }).state).toBe('consistent')
    expect(told({ print: '6V6GTY', choices: { baseMaterial: 'ceramic' } }).state).toBe('contradictory')
  })

  test('a mesh inside a noval single pentode leads to the EF86', () => {
    const seen = { base: 'noval', shield: 'mesh', plates: 'one' }
    expect(told({ choices: seen, skipped: ['print'] }).ranked[0]?.version?.typeId).toBe('EF86')
  })

  test('plate colour and ribs settle nothing', () => {
    const plain = told({ print: '6L6GC' })
    const black = told({ print: '6L6GC', choices: { plateColour: 'black-plate', plateShape: 'ribbed' } })
    expect(candidate(black, '6L6GC').share).toBeCloseTo(candidate(plain, '6L6GC').share, 10)
  })

  test('extra micas speak for the special-quality issue', () => {
    const share = (micas: string) =>
      candidate(
        told({ choices: { base: 'noval', micas, heaterPins: '4-5-9' }, skipped: ['print'], print: 'CV4024' }),
        'CV4024',
      ).share
    expect(share('more')).toBeGreaterThan(share('two'))
  })

  test('an inner mesh shield with a 7-pin base leads to the 6AU6 types', () => {
    expect(
      told({ choices: { base: 'miniature-7', shield: 'mesh' }, skipped: ['print'] }).ranked[0]?.version?.typeId,
    ).toBe('6AU6')
  })

  test('a top cap or a locking base: none of those known here', () => {
    for (const choices of [{ topCap: 'cap' }, { base: 'loctal' }])
      expect(told({ choices }).ranked[0]?.version).toBeNull()
  })

  test('bare filament between 2 and 8 with two plates: a rectifier with a filament, never the GZ34', () => {
    const found = told({
      choices: { base: 'octal', heaterPins: '2-8', cathode: 'filament', plates: 'alike' },
      skipped: ['print'],
    })
    for (const { version } of found.ranked.slice(0, 3))
      expect(['5U4G', '5U4GB', '5R4GY', '5Y3GT']).toContain(version?.typeId)
  })

  test('two unlike plates on a tapped noval heater: the 12DW7', () => {
    const found = told({ choices: { base: 'noval', plates: 'unlike', heaterPins: '4-5-9' }, skipped: ['print'] })
    expect(found.ranked[0]?.version?.typeId).toBe('12DW7')
  })
})

test('nothing told: unknown, and no version is called consistent', () => {
  const found = told({})
  expect(found.state).toBe('unknown')
  expect(found.ranked.every(({ state }) => state === 'unknown')).toBe(true)
})
