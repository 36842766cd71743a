import { describe, expect, test } from 'vitest'
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { plainSocket, type Socket } from '@/lib/domain/amp/socket'
import { benchResult } from '@/lib/domain/bench/bench-result'
import { readingGapText } from '@/lib/domain/bench/reading-gap-text'
import { methodOf } from '@/lib/domain/bench/reading-of-socket'
import type { ReadingSet, SocketEntry } from '@/lib/domain/bench/reading-set'
import { ohms } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { BENCH_SHOP } from '@/tests/support/bench-shop'

const socket = (id: string, more: Partial<Socket>): Socket => ({
  ...plainSocket(id, 'output', '6L6GC'),
  id,
  place: Number(id.slice(1)),
  biasKind: 'grid-supplied',
  ...more,
})

const sheet = (sockets: readonly Socket[], outputClass: 'push-pull' | 'single-ended' = 'push-pull'): AmpSheet => ({
  amp: {
    id: 'amp',
    customerId: 'customer',
    make: 'Test',
    model: 'One',
    serial: '1',
    mainsVolts: 120,
    protectionClass: 'I',
    fuse: '',
    outputClass,
    plateLoadOhms: null,
    note: '',
    version: 1,
  },
  sockets,
})

const entry = (socketId: string, more: Partial<SocketEntry>): SocketEntry => ({
  socketId,
  method: '',
  plateVolts: null,
  cathodeVolts: null,
  screenVolts: null,
  gridVolts: null,
  senseDropVolts: null,
  halfDropVolts: null,
  screenDropVolts: null,
  ...more,
})

const round = (entries: readonly SocketEntry[], more: Partial<ReadingSet> = {}): ReadingSet => ({
  id: 'set',
  jobId: 'job',
  phase: 'before',
  takenAt: new Date('2026-03-01T10:00:00Z'),
  takenBy: 'Somebody',
  instrumentId: 'meter',
  instrumentName: 'Bench meter',
  calibratedOn: null,
  meter: { id: 'Bench meter', percentOfReading: 0.5, counts: 2, displayCounts: 6000, inputResistance: ohms(1e7) },
  wallVolts: 120,
  warmupMinutes: 15,
  signalState: 'no signal',
  resistorTolerancePercent: 1,
  copperWarmingCelsius: 0,
  note: '',
  version: 1,
  entries,
  ...more,
})

const only = (result: ReturnType<typeof benchResult>) => {
  const outcome = result.sockets[0]?.outcome
  if (outcome?.kind !== 'idle') throw new Error(`Expected an idle, got ${JSON.stringify(outcome)}`)
  return outcome.idle
}

const words = wordsFor('US')

describe('a round of readings worked out', () => {
  test('35.2 mV over 1 Ω at 425 V with 2.1 mA of screen current is 14.07 W', () => {
    // 2.1 mA over 470 Ω reads 0.987 V; (425 − 0.0352) V × (35.2 − 2.1) mA = 14.066 W, by hand.
    const sockets = [socket('V4', { senseOhms: 1, screenOhms: 470 })]
    const read = entry('V4', {
      method: 'cathode-sense',
      plateVolts: 425,
      senseDropVolts: 0.0352,
      screenDropVolts: 0.987,
    })
    const idle = only(benchResult(sheet(sockets), round([read]), BENCH_SHOP))
    expect(idle.plateWatts.value).toBeCloseTo(14.066, 3)
    expect(idle.screenAmps.value).toBeCloseTo(0.0021, 6)
    expect(idle.screenAmps.estimate).toBe(false)
    expect(idle.verdict.verdict).toBe('under')
  })

  test('1.59 V over a 41 Ω half primary is 38.8 mA, about 70 % of 25 W at 450 V (common practice, no source)', () => {
    const sockets = [socket('V4', { typeFitted: 'EL34', halfPrimaryOhms: 41 })]
    const read = entry('V4', { method: 'half-primary-drop', plateVolts: 450, cathodeVolts: 0, halfDropVolts: 1.59 })
    const idle = only(benchResult(sheet(sockets), round([read]), BENCH_SHOP))
    expect(1000 * idle.plateAmps.value).toBeCloseTo(38.78, 2)
    expect(idle.platePercent?.value).toBeCloseTo(69.8, 1)
    expect(idle.verdict.verdict).toBe('uncertain')
  })

  test('a cathode-resistor amp is held to its own window, never to 60–70 %', () => {
    const more = { typeFitted: 'EL84', biasKind: 'cathode-resistor', cathodeOhms: 130, cathodeSharedBy: 2 } as const
    const sockets = [socket('V3', { ...more, side: 'A' }), socket('V4', { ...more, side: 'B' })]
    const read = ['V3', 'V4'].map((id) =>
      entry(id, { method: 'cathode-bias', plateVolts: 318, cathodeVolts: 10.4, screenVolts: 310 }),
    )
    const result = benchResult(sheet(sockets), round(read), BENCH_SHOP)
    const idle = only(result)
    // 10.4 V / 130 Ω / 2 = 40 mA a cathode.
    expect(1000 * idle.cathodeAmps.value).toBeCloseTo(40, 6)
    expect(idle.verdict.window).toEqual({ low: 0.8, high: 1 })
    expect(result.groups[0]?.balance.fromSum).toBe(true)
  })

  test('one resistor shared by two sockets is one source of error', () => {
    const more = { typeFitted: 'EL84', biasKind: 'cathode-resistor', cathodeOhms: 130, cathodeSharedBy: 2 } as const
    const sockets = [socket('V3', more), socket('V4', more)]
    const read = ['V3', 'V4'].map((id) => entry(id, { method: 'cathode-bias', plateVolts: 318, cathodeVolts: 10.4 }))
    const { sockets: results } = benchResult(sheet(sockets), round(read), BENCH_SHOP)
    const resistors = results.map(({ outcome }) =>
      outcome.kind === 'idle'
        ? outcome.idle.contributions.find(({ source }) => source.kind === 'resistor')?.source.name
        : null,
    )
    expect(resistors[0]).toBe('output cathode resistor')
    expect(resistors[1]).toBe(resistors[0])
  })

  test('a preamp socket keeps its volts and is not judged', () => {
    const sockets = [socket('V1', { role: 'preamp', typeFitted: '12AX7', biasKind: '', matchGroup: '' })]
    const result = benchResult(sheet(sockets), round([entry('V1', { plateVolts: 182 })]), BENCH_SHOP)
    expect(result.sockets[0]?.outcome).toEqual({ kind: 'noted' })
  })

  test('an empty socket is left out; it is no reading of zero', () => {
    const sockets = [socket('V4', { senseOhms: 1 }), socket('V5', { senseOhms: 1 })]
    const read = entry('V4', { method: 'cathode-sense', plateVolts: 425, senseDropVolts: 0.03 })
    const result = benchResult(sheet(sockets), round([read, entry('V5', {})]), BENCH_SHOP)
    expect(result.sockets.map(({ socket: { position } }) => position)).toEqual(['V4'])
  })
})

describe('what one part tells of several tubes', () => {
  const shared = { typeFitted: 'EL84', biasKind: 'cathode-resistor', cathodeOhms: 68, cathodeSharedBy: 4 } as const
  const quad = ['V3', 'V4', 'V5', 'V6'].map((id, at) => socket(id, { ...shared, side: at < 2 ? 'A' : 'B' }))
  const idles = (result: ReturnType<typeof benchResult>) =>
    result.sockets.map(({ outcome }) => (outcome.kind === 'idle' ? outcome.idle : null))

  test('12.3 V over 68 Ω read at V3 alone is 45.2 mA of cathode current in each of four', () => {
    const read = quad.map(({ id }) =>
      entry(id, id === 'V3' ? { plateVolts: 320, cathodeVolts: 12.3, method: 'cathode-bias' } : { plateVolts: 320 }),
    )
    // 12.3 V / 68 Ω / 4 = 45.22 mA; 320 − 12.3 = 307.7 V, by hand.
    for (const each of idles(benchResult(sheet(quad), round(read), BENCH_SHOP))) {
      expect(1000 * (each?.cathodeAmps.value ?? 0)).toBeCloseTo(45.22, 2)
      expect(each?.plateToCathodeVolts.value).toBeCloseTo(307.7, 6)
    }
  })

  test('what was read at a socket itself is never replaced', () => {
    const read = ['V3', 'V4'].map((id, at) =>
      entry(id, { plateVolts: 320, cathodeVolts: at === 0 ? 12.3 : 12.1, method: 'cathode-bias' }),
    )
    const result = benchResult(sheet(quad), round(read), BENCH_SHOP)
    expect(result.sockets.map(({ entry: { cathodeVolts } }) => cathodeVolts)).toEqual([12.3, 12.1])
  })

  test('a half primary tells of its own side only', () => {
    const half = { halfPrimaryOhms: 74, halfSharedBy: 2 }
    const sockets = ['V2', 'V3', 'V4'].map((id, at) => socket(id, { ...half, side: at < 2 ? 'A' : 'B' }))
    const read = sockets.map(({ id }) =>
      entry(
        id,
        id === 'V2' ? { plateVolts: 452, halfDropVolts: 5.55, method: 'half-primary-drop' } : { plateVolts: 452 },
      ),
    )
    const [first, second, other] = benchResult(sheet(sockets), round(read), BENCH_SHOP).sockets
    expect(first?.outcome.kind).toBe('idle')
    expect(second?.outcome.kind).toBe('idle')
    expect(other?.outcome).toMatchObject({ kind: 'gap', gap: { code: 'no-current-read' } })
  })

  test('two of four on a resistor with no sides noted: which two is not known, so nothing is carried over', () => {
    const sockets = ['V3', 'V4'].map((id) => socket(id, { ...shared, cathodeSharedBy: 2, matchGroup: 'out' }))
    const all = [
      ...sockets,
      ...['V5', 'V6'].map((id) => socket(id, { ...shared, cathodeSharedBy: 2, matchGroup: 'out' })),
    ]
    const read = all.map(({ id }) =>
      entry(id, id === 'V3' ? { plateVolts: 320, cathodeVolts: 12, method: 'cathode-bias' } : { plateVolts: 320 }),
    )
    expect(idles(benchResult(sheet(all), round(read), BENCH_SHOP)).filter(Boolean)).toHaveLength(1)
  })
})

describe('where the cathode stands', () => {
  test('a grid-supplied stage read by its half primary has it at chassis, and says so', () => {
    const sockets = [socket('V4', { halfPrimaryOhms: 74, side: 'A' })]
    const read = entry('V4', { method: 'half-primary-drop', plateVolts: 452, halfDropVolts: 2.775 })
    const idle = only(benchResult(sheet(sockets), round([read]), BENCH_SHOP))
    // 2.775 V / 74 Ω = 37.5 mA; × 452 V = 16.95 W, by hand.
    expect(idle.plateWatts.value).toBeCloseTo(16.95, 2)
    expect(idle.estimates).toContainEqual({ kind: 'cathode-at-chassis-assumed' })
  })

  test('10 Ω of sense under a 470 Ω cathode resistor: 0.65 V is not the cathode, so cathode volts are asked for', () => {
    const more = { typeFitted: 'EL34', biasKind: 'cathode-resistor', cathodeOhms: 470, senseOhms: 10 } as const
    const read = { method: 'cathode-sense', plateVolts: 410, senseDropVolts: 0.65 } as const
    const result = (cathodeVolts: number | null) =>
      benchResult(sheet([socket('V2', more)]), round([entry('V2', { ...read, cathodeVolts })]), BENCH_SHOP)
    expect(result(null).sockets[0]?.outcome).toMatchObject({
      kind: 'incomplete',
      fault: { code: 'missing-cathode-voltage' },
    })
    expect(only(result(31.2)).plateToCathodeVolts.value).toBeCloseTo(378.8, 6)
  })

  test('a signal tube in an output socket is no contradiction of the readings', () => {
    const read = entry('V4', { method: 'cathode-sense', plateVolts: 250, senseDropVolts: 0.03 })
    const result = benchResult(sheet([socket('V4', { typeFitted: '12BH7', senseOhms: 1 })]), round([read]), BENCH_SHOP)
    expect(result.sockets[0]?.outcome.kind).toBe('incomplete')
  })
})

describe('what is missing is named', () => {
  const gapOf = (more: Partial<Socket>, read: Partial<SocketEntry>) => {
    const result = benchResult(sheet([socket('V4', more)]), round([entry('V4', read)]), BENCH_SHOP)
    const outcome = result.sockets[0]?.outcome
    return outcome?.kind === 'gap' ? readingGapText(outcome.gap, words) : outcome?.kind
  }

  test.each([
    [{ typeFitted: '' }, { plateVolts: 400 }, 'no tube type is on the sheet'],
    [{ typeFitted: 'QQ99' }, { plateVolts: 400 }, '“QQ99” is not in the handbook'],
    [{ biasKind: '' as const }, { plateVolts: 400 }, 'does not say whether the grid is supplied'],
    [{ senseOhms: 1 }, { plateVolts: 400 }, 'no drop was read'],
    [{ senseOhms: 1 }, { method: 'cathode-sense' as const, senseDropVolts: 0.03 }, 'plate volts were not read'],
    [
      {},
      { method: 'cathode-sense' as const, plateVolts: 400, senseDropVolts: 0.03 },
      'no value for the sense resistor',
    ],
    [{}, { method: 'half-primary-drop' as const, plateVolts: 400, halfDropVolts: 2 }, 'no value for the half primary'],
  ])('%j with %j: “%s”', (more, read, sentence) => {
    expect(gapOf(more, read)).toContain(sentence)
  })

  test('plate volts below the cathode are a contradiction, not a negative power', () => {
    const read = entry('V4', { method: 'cathode-sense', plateVolts: 0.01, senseDropVolts: 0.03 })
    const result = benchResult(sheet([socket('V4', { senseOhms: 1 })]), round([read]), BENCH_SHOP)
    expect(result.sockets[0]?.outcome.kind).toBe('contradiction')
  })
})

describe('the method follows the box that was filled in', () => {
  const { method: _method, ...blank } = entry('V4', {})
  test.each([
    [{ senseDropVolts: 0.03, halfDropVolts: 1.5 }, 'grid-supplied', 'cathode-sense'],
    [{ halfDropVolts: 1.5, cathodeVolts: 10 }, 'cathode-resistor', 'half-primary-drop'],
    [{ cathodeVolts: 10 }, 'cathode-resistor', 'cathode-bias'],
    [{ cathodeVolts: 0.03 }, 'grid-supplied', ''],
    [{ plateVolts: 400 }, 'grid-supplied', ''],
  ] as const)('%j on a %s socket: “%s”', (read, biasKind, method) => {
    expect(methodOf({ ...blank, ...read }, socket('V4', { biasKind }))).toBe(method)
  })
})

test('with the screens joined to the plates all of the cathode current counts as plate current', () => {
  const read = { method: 'cathode-sense', plateVolts: 401, cathodeVolts: 0.04, senseDropVolts: 0.04 } as const
  const strapped = { ...sheet([socket('V4', { senseOhms: 1 })]), screenFeed: 'triode-strapped' as const }
  const idle = only(benchResult(strapped, round([entry('V4', read)]), BENCH_SHOP))
  // 40 mV over 1 Ω is 40 mA; 400.96 V across the tube: 16.04 W, nothing taken off for a screen.
  expect(idle.plateAmps.value).toBeCloseTo(0.04, 9)
  expect(idle.plateWatts.value).toBeCloseTo(16.038, 3)
})
