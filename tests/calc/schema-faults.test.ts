import { expect, test } from 'vitest'
import { faults } from './answers'

const socket = {
  socket: 'V3',
  type: 'EL34',
  plateVolts: 450,
  current: { method: 'cathode-sense', dropMillivolts: 40, ohms: 1, tolerancePercent: 1 },
}
const meter = { percentOfReading: 0.5, counts: 2, displayCounts: 6000 }
const given = (changes: object, more: object = {}) => ({
  bias: 'grid-supplied',
  meter,
  sockets: [{ ...socket, ...changes }],
  ...more,
})

test.each([
  [
    'a bound',
    given({ plateVolts: 45_000 }),
    'out-of-bounds',
    'sockets[0].plateVolts is 45000; it must be at most 5000.',
  ],
  [
    'no box is zero',
    given({ plateVolts: undefined }),
    'missing',
    'sockets[0].plateVolts is missing; it must be a number.',
  ],
  ['text', given({ plateVolts: '450' }), 'wrong-type', 'sockets[0].plateVolts is "450"; it must be a number.'],
  ['null', given({ plateVolts: null }), 'wrong-type', 'sockets[0].plateVolts is null; it must be a number.'],
  [
    '1e999 in JSON',
    given({ plateVolts: Number.POSITIVE_INFINITY }),
    'wrong-type',
    'sockets[0].plateVolts is too large for a number; it must be a number.',
  ],
  [
    'an exclusive bound',
    given({ current: { ...socket.current, ohms: 0 } }),
    'out-of-bounds',
    'sockets[0].current.ohms is 0; it must be above 0.',
  ],
  [
    'a choice',
    given({}, { bias: 'fixed' }),
    'not-a-choice',
    'bias is "fixed"; it must be one of "grid-supplied", "cathode-resistor".',
  ],
  [
    'a method',
    given({ current: { method: 'probe' } }),
    'not-a-choice',
    'sockets[0].current.method is "probe"; it must be one of "cathode-sense", "cathode-bias", "half-primary-drop".',
  ],
  ['no method', given({ current: {} }), 'missing', /^sockets\[0\]\.current\.method is missing; it must be one of/],
  [
    'an unknown key',
    given({ plateVolt: 450 }),
    'unknown-key',
    'sockets[0].plateVolt (450) is no key here; --schema lists them all.',
  ],
  ['an odd key', given({ 'plate volts': 1 }), 'unknown-key', /^sockets\[0\]\["plate volts"\] \(1\) is no key here/],
  ['a key of every object', given(JSON.parse('{"__proto__": 1}')), 'unknown-key', /__proto__/],
  ['too few', { ...given({}), sockets: [] }, 'out-of-bounds', 'sockets is a list of 0; it must have at least 1.'],
  ['too long', given({ socket: 'V'.repeat(61) }), 'out-of-bounds', /, 61 characters; it must have at most 60\.$/],
  [
    'a fraction of a count',
    given({}, { meter: { ...meter, displayCounts: 1.5 } }),
    'wrong-type',
    'meter.displayCounts is 1.5; it must be a whole number.',
  ],
  ['no object', 7, 'wrong-type', 'The input is 7; it must be an object.'],
])('%s', async (_, input, code, sentence) => {
  const [first, ...more] = await faults('idle', input)
  expect(more).toEqual([])
  expect(first?.code).toBe(code)
  expect(first?.sentence).toMatch(
    typeof sentence === 'string' ? new RegExp(`^${sentence.replaceAll(/[.[\]()]/g, '\\$&')}$`) : sentence,
  )
})

test('all that is wrong is told at once', async () => {
  const found = await faults('idle', given({ plateVolts: -1, type: 3 }, { odd: 1 }))
  expect(found.map(({ path }) => path).sort()).toEqual(['odd', 'sockets[0].plateVolts', 'sockets[0].type'])
})
