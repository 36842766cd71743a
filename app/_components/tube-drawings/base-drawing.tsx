/** Bases seen from the pins, pin 1 ringed. Pins run clockwise from the key or the gap. */
import { Drawing } from './drawing'
import styles from './tube-drawings.module.css'

type Base = {
  readonly rim: number
  readonly circle: number
  /** Degrees clockwise from the top, in the order of the pins. */
  readonly pins: readonly number[]
  readonly thickness: (pin: number) => number
  readonly centre: 'key' | 'lock' | 'none'
}

/** The gap or the key is at the bottom, as the drawings of the handbooks have it. */
const from = (start: number, step: number, count: number): number[] =>
  Array.from({ length: count }, (_, index) => 180 + start + step * index)

const BASES: Readonly<Record<string, Base>> = {
  octal: { rim: 30, circle: 20, pins: from(22.5, 45, 8), thickness: () => 3, centre: 'key' },
  loctal: { rim: 30, circle: 21, pins: from(22.5, 45, 8), thickness: () => 1.6, centre: 'lock' },
  noval: { rim: 24, circle: 15, pins: from(36, 36, 9), thickness: () => 1.6, centre: 'none' },
  'miniature-7': { rim: 20, circle: 13, pins: from(45, 45, 7), thickness: () => 1.6, centre: 'none' },
  novar: { rim: 32, circle: 23, pins: from(36, 36, 9), thickness: () => 2, centre: 'none' },
  'four-pin': {
    rim: 30,
    circle: 18,
    pins: [225, 315, 45, 135],
    thickness: (pin) => (pin === 1 || pin === 4 ? 4.4 : 3),
    centre: 'none',
  },
}

const CENTRE = 36

/** Sines differ in the last place between server and browser. */
const rounded = (value: number): number => Math.round(value * 100) / 100

function at(degrees: number, radius: number): readonly [number, number] {
  const turn = (degrees * Math.PI) / 180
  return [rounded(CENTRE + radius * Math.sin(turn)), rounded(CENTRE - radius * Math.cos(turn))]
}

function Middle({ centre }: Pick<Base, 'centre'>) {
  if (centre === 'none') return null
  return (
    <>
      <circle cx={CENTRE} cy={CENTRE} r={8} />
      {centre === 'lock' && <circle className={styles.fine} cx={CENTRE} cy={CENTRE} r={5} />}
      <path className={styles.solid} d={`M ${CENTRE - 2.5} ${CENTRE + 7} h 5 v 4.5 h -5 Z`} />
    </>
  )
}

/** Clockwise seen from below: on paper the first pin lies left of the key, the last right of it. */
function Pins({ base: { pins, circle, thickness } }: { base: Base }) {
  const [x, y] = at(pins[0] ?? 0, circle)
  return (
    <>
      {pins.map((degrees, index) => {
        const [cx, cy] = at(degrees, circle)
        return <circle key={degrees} className={styles.solid} cx={cx} cy={cy} r={thickness(index + 1)} />
      })}
      <circle className={styles.fine} cx={x} cy={y} r={6} />
    </>
  )
}

export function BaseDrawing({ choice, title }: { choice: string; title?: string }) {
  const base = BASES[choice]
  if (!base) return null
  return (
    <Drawing viewBox="0 0 72 72" title={title}>
      <circle cx={CENTRE} cy={CENTRE} r={base.rim} />
      <Middle centre={base.centre} />
      <Pins base={base} />
    </Drawing>
  )
}

/** Where pin 1 lies and which way the count runs, for a test of the geometry. */
export const basePins = (choice: string): readonly (readonly [number, number])[] =>
  (BASES[choice]?.pins ?? []).map((degrees) => at(degrees, BASES[choice]?.circle ?? 0))
