import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pointAt } from '@/lib/domain/amp/chassis-frame'
import {
  type ChassisLayout,
  type ChassisSocketSpec,
  layoutChassis,
  type Rect,
  restingPlace,
  type SocketPlace,
} from '@/lib/domain/amp/chassis-layout'
import { pinsFromAbove } from '@/lib/domain/amp/chassis-pins'

const socket = (overrides: Partial<ChassisSocketSpec>): ChassisSocketSpec => ({
  id: 's1',
  position: 'V1',
  role: 'preamp',
  base: 'noval',
  across: null,
  depth: null,
  ...overrides,
})

const chassis = (...parts: readonly Partial<ChassisSocketSpec>[]): readonly ChassisSocketSpec[] =>
  parts.map((part, index) => socket({ id: `s${index + 1}`, position: `V${index + 1}`, ...part }))

const preamp = { role: 'preamp', base: 'noval' } as const
const output = { role: 'output', base: 'octal' } as const
const rectifier = { role: 'rectifier', base: 'octal' } as const

const anySocket = fc.record({
  role: fc.constantFrom(
    ...([
      'preamp',
      'phase-inverter',
      'driver',
      'reverb',
      'tremolo',
      'output',
      'rectifier',
      'regulator',
      'other',
    ] as const),
  ),
  base: fc.constantFrom(...(['octal', 'noval', 'miniature', 'other'] as const)),
  // Half of them crowd into one corner, and some lie outside 0–100.
  across: fc.option(fc.oneof(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 12 }), fc.constant(140))),
  depth: fc.option(
    fc.oneof(fc.double({ min: 0, max: 100, noNaN: true }), fc.integer({ min: 0, max: 12 }), fc.constant(-5)),
  ),
  labelLines: fc.integer({ min: 0, max: 8 }),
})
const anyChassis = fc.array(anySocket, { minLength: 1, maxLength: 20 }).map((parts) => chassis(...parts))
const automaticChassis = anyChassis.map((specs) => specs.map((spec) => ({ ...spec, across: null, depth: null })))

const gapBetween = (a: SocketPlace, b: SocketPlace) => Math.hypot(a.x - b.x, a.y - b.y) - a.reach - b.reach

function gapToRect(place: SocketPlace, rect: Rect): number {
  const dx = Math.max(rect.x - place.x, 0, place.x - rect.x - rect.width)
  const dy = Math.max(rect.y - place.y, 0, place.y - rect.y - rect.height)
  return Math.hypot(dx, dy) - place.reach
}

const rectsOverlap = (a: Rect, b: Rect) =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height

const pairs = <T>(all: readonly T[]): readonly (readonly [T, T])[] =>
  all.flatMap((a, index) => all.slice(index + 1).map((b) => [a, b] as const))

const rectOf = (place: SocketPlace): Rect => ({
  x: place.x - place.reach,
  y: place.y - place.reach,
  width: 2 * place.reach,
  height: 2 * place.reach,
})

function isInside(outline: Rect, rect: Rect): boolean {
  const right = outline.x + outline.width
  const bottom = outline.y + outline.height
  return rect.x >= outline.x && rect.y >= outline.y && rect.x + rect.width <= right && rect.y + rect.height <= bottom
}

function expectSound(layout: ChassisLayout, specs: readonly ChassisSocketSpec[]) {
  expect(layout.places.map((place) => place.id)).toEqual(specs.map((spec) => spec.id))
  for (const [a, b] of pairs(layout.places)) expect(gapBetween(a, b)).toBeGreaterThan(0)
  for (const [a, b] of pairs(layout.landmarks)) expect(rectsOverlap(a, b)).toBe(false)
  for (const place of layout.places) {
    expect(isInside(layout.outline, rectOf(place))).toBe(true)
    expect(isInside(layout.outline, place.label)).toBe(true)
    for (const landmark of layout.landmarks) expect(gapToRect(place, landmark)).toBeGreaterThan(0)
  }
  for (const landmark of layout.landmarks) expect(isInside(layout.outline, landmark)).toBe(true)
}

describe('any chassis of 1 to 20 sockets, with and without places', () => {
  it('has no two circles overlapping, all inside the outline, no landmark over a socket', () => {
    fc.assert(
      fc.property(anyChassis, (specs) => expectSound(layoutChassis(specs), specs)),
      { numRuns: 80 },
    )
  })

  it('is laid out the same way every time', () => {
    fc.assert(
      fc.property(anyChassis, (specs) => {
        expect(layoutChassis(structuredClone(specs))).toEqual(layoutChassis(specs))
      }),
      { numRuns: 25 },
    )
  })

  it('leaves every given place where it was given, unless its circle would overlap an earlier one', () => {
    fc.assert(
      fc.property(anyChassis, (specs) => {
        const { places, outline } = layoutChassis(specs)
        const given = places.filter((place) => place.source !== 'automatic')
        for (const [index, place] of places.entries()) {
          const { across, depth } = specs[index] as ChassisSocketSpec
          if (across === null || depth === null) {
            expect(place.source).toBe('automatic')
            continue
          }
          const wanted = pointAt(outline, across, depth)
          const earlier = given.slice(0, given.indexOf(place))
          const blocked = earlier.some((other) => gapBetween(other, { ...place, ...wanted }) < 5)
          if (place.source === 'moved-aside') expect(blocked).toBe(true)
          else expect([place.x, place.y]).toEqual([wanted.x, wanted.y])
        }
      }),
      { numRuns: 60 },
    )
  })
})

describe('an amplifier without places', () => {
  it('keeps all lettering clear of other lettering, sockets and landmarks', () => {
    fc.assert(
      fc.property(automaticChassis, (specs) => {
        const { places, landmarks } = layoutChassis(specs)
        for (const [a, b] of pairs(places)) {
          expect(rectsOverlap(a.label, b.label)).toBe(false)
          expect(gapToRect(a, b.label)).toBeGreaterThan(0)
          expect(gapToRect(b, a.label)).toBeGreaterThan(0)
        }
        for (const place of places) {
          for (const landmark of landmarks) expect(rectsOverlap(place.label, landmark)).toBe(false)
        }
      }),
      { numRuns: 100 },
    )
  })

  // Common practice, no source.
  it('stands outputs in one row at the rear, preamp tubes in chassis order in front, rectifier by the mains transformer', () => {
    const specs = chassis(
      preamp,
      preamp,
      { ...preamp, role: 'phase-inverter' },
      output,
      output,
      output,
      output,
      rectifier,
    )
    const { places, landmarks } = layoutChassis(specs)
    const [v1, v2, v3, v4, v5, v6, v7, v8] = places as SocketPlace[]
    expect(new Set([v4?.y, v5?.y, v6?.y, v7?.y, v8?.y]).size).toBe(1)
    expect(v1?.y).toBeGreaterThan(v4?.y ?? Number.NaN)
    const across = [v1, v2, v3].map((place) => place?.x ?? Number.NaN)
    expect(across).toEqual([...across].sort((a, b) => a - b))
    const mains = landmarks.find((landmark) => landmark.kind === 'mains-transformer') as Rect
    const distances = [v4, v5, v6, v7, v8].map((place) => gapToRect(place as SocketPlace, mains))
    expect(Math.min(...distances)).toBe(distances[4])
  })

  it('has no output transformer when it has no output tubes', () => {
    const kinds = layoutChassis(chassis(preamp, preamp)).landmarks.map((landmark) => landmark.kind)
    expect(kinds).toContain('mains-transformer')
    expect(kinds).not.toContain('output-transformer')
  })

  it('with no sockets at all is still a chassis', () => {
    const { places, landmarks } = layoutChassis([])
    expect(places).toEqual([])
    expect(landmarks.length).toBeGreaterThan(0)
  })
})

describe('given places', () => {
  it('put 0/0 at the front left and 100/100 at the rear right', () => {
    const { places } = layoutChassis(chassis({ across: 0, depth: 0 }, { across: 100, depth: 100 }))
    const [frontLeft, rearRight] = places as [SocketPlace, SocketPlace]
    expect(frontLeft.x).toBeLessThan(rearRight.x)
    expect(frontLeft.y).toBeGreaterThan(rearRight.y)
  })

  it('count as none when only one of the two numbers is there', () => {
    expect(layoutChassis(chassis({ across: 40, depth: null })).places[0]?.source).toBe('automatic')
  })

  it('let the later of two sockets on one spot step aside to a whole place', () => {
    const [first, second] = layoutChassis(chassis({ across: 50, depth: 50 }, { across: 50, depth: 50 })).places
    expect(first).toMatchObject({ source: 'given', across: 50, depth: 50 })
    expect(second?.source).toBe('moved-aside')
    expect(Number.isInteger(second?.across) && Number.isInteger(second?.depth)).toBe(true)
  })

  it('of one socket do not shuffle the automatic ones that are not in its way', () => {
    const before = layoutChassis(chassis(preamp, preamp, output, output)).places
    const after = layoutChassis(chassis(preamp, { ...preamp, across: 70, depth: 20 }, output, output)).places
    for (const at of [0, 2, 3]) expect(after[at]).toEqual(before[at])
  })
})

describe('a socket put down by hand', () => {
  const specs = chassis({ across: 20, depth: 50 }, { across: 60, depth: 50 })
  const { outline } = layoutChassis(specs)

  it('stays where it was put when nothing is there', () => {
    expect(restingPlace(specs, outline, { id: 's1', across: 30, depth: 10 })).toEqual({ across: 30, depth: 10 })
  })

  it('comes to rest beside the one it was put on, and is then left there', () => {
    const rest = restingPlace(specs, outline, { id: 's1', across: 60, depth: 50 })
    expect(rest).not.toEqual({ across: 60, depth: 50 })
    const after = layoutChassis(specs.map((spec) => (spec.id === 's1' ? { ...spec, ...rest } : spec))).places
    expect(after.map((place) => place.source)).toEqual(['given', 'given'])
  })

  it('outside the chassis comes in to the edge', () => {
    expect(restingPlace(specs, outline, { id: 's1', across: -30, depth: 170 })).toEqual({ across: 0, depth: 100 })
  })
})

/**
 * Handbook base drawings number pins clockwise from the key or gap, seen from
 * below; from above they run the other way. Octal 8 × 45°, noval 9 pins at 36°,
 * miniature 7 pins at 45° (from memory of the handbook outline drawings).
 */
describe('pins from above', () => {
  const counterClockwise = (base: 'octal' | 'noval' | 'miniature') =>
    pinsFromAbove(base).map((pin) => ((Math.atan2(-pin.x, -pin.y) * 180) / Math.PI + 360) % 360)

  it.each([
    ['octal', 8, 22.5, 45],
    ['noval', 9, 36, 36],
    ['miniature', 7, 45, 45],
  ] as const)('%s has %i, the first %d° counter-clockwise of the key, then every %d°', (base, count, first, step) => {
    const angles = counterClockwise(base)
    expect(angles).toHaveLength(count)
    angles.forEach((angle, index) => {
      expect(angle).toBeCloseTo(first + index * step, 6)
    })
  })

  it('has the last pin as far from the key as the first', () => {
    for (const base of ['octal', 'noval', 'miniature'] as const) {
      const angles = counterClockwise(base)
      expect(360 - (angles.at(-1) ?? 0)).toBeCloseTo(angles[0] ?? 0, 6)
    }
  })

  it('says nothing of a base it does not know', () => {
    expect(pinsFromAbove('other')).toEqual([])
  })
})
