/**
 * A base as handbooks draw it: seen from below, pins numbered clockwise from the key or the
 * gap, which lies at the foot of the drawing. Octal: 8 pins at 45°, key between 8 and 1;
 * noval and novar: 9 pins at 36° and a gap; miniature: 7 pins at 45° and a gap; four-pin: two
 * thick pins, 1 and 4, at the foot. From memory of the base outlines in the tube handbooks.
 * Everything drawn stands in the list of pins beside it.
 */
import { PIN_COUNTS } from '@/lib/domain/tube/tube-ratings'
import type { TubeBase } from '@/lib/domain/tube/tube-variant'
import styles from './card.module.css'

type Layout = { readonly firstDegrees: number; readonly stepDegrees: number }

/** Clockwise from the foot. */
const LAYOUTS: Readonly<Record<Exclude<TubeBase['name'], 'four-pin'>, Layout>> = {
  octal: { firstDegrees: 22.5, stepDegrees: 45 },
  noval: { firstDegrees: 36, stepDegrees: 36 },
  novar: { firstDegrees: 36, stepDegrees: 36 },
  'miniature-7': { firstDegrees: 45, stepDegrees: 45 },
}
const FOUR_PIN = [45, 130, 230, 315] as const
const THICK: ReadonlySet<number> = new Set([1, 4])

const anglesOf = (base: TubeBase['name']): readonly number[] => {
  if (base === 'four-pin') return FOUR_PIN
  const { firstDegrees, stepDegrees } = LAYOUTS[base]
  return Array.from({ length: PIN_COUNTS[base] }, (_, index) => firstDegrees + index * stepDegrees)
}

/** "h", "a2", "g1": what fits beside a pin. */
const short = (electrode: string): string =>
  electrode
    .replace(/ \(unit (\d)\)/, ' $1')
    .replace(/ (pentode|triode).*$/, (_, which: string) => ` ${which.charAt(0).toUpperCase()}`)
    .replace(/ \(.*?\)/g, '')
    .replace(/ \/ .*$/, '')
    .replace(' + ', ', ')
    .replace('k, beam plates', 'k, bp')
    .replace('heater centre tap', 'hct')
    .replace('beam plates', 'bp')
    .replace(/no connection|shell|base sleeve|base shell/, (part) => (part.includes('shell') ? 'shell' : 'nc'))

const RADIUS = 62
const LETTERS = 96
const at = (degrees: number, radius: number) => {
  const angle = (degrees * Math.PI) / 180
  return { x: Number((-radius * Math.sin(angle)).toFixed(1)), y: Number((radius * Math.cos(angle)).toFixed(1)) }
}

type Props = { readonly base: TubeBase['name']; readonly pins: Readonly<Record<string, string>> | null }

export function BaseDrawing({ base, pins }: Props) {
  return (
    <svg className={styles.base} viewBox="-165 -132 330 264" aria-hidden="true">
      <circle r="88" className={styles.outline} />
      {base === 'octal' && <path d="M-9 20A22 22 0 1 1 9 20V30H-9Z" className={styles.key} />}
      {anglesOf(base).map((degrees, index) => (
        <Pin key={degrees} base={base} number={index + 1} degrees={degrees} electrode={pins?.[index + 1]} />
      ))}
    </svg>
  )
}

type PinProps = {
  readonly base: TubeBase['name']
  readonly number: number
  readonly degrees: number
  readonly electrode: string | undefined
}

function Pin({ base, number, degrees, electrode }: PinProps) {
  const [hole, word] = [at(degrees, RADIUS), at(degrees, LETTERS)]
  const anchor = Math.abs(word.x) < 12 ? 'middle' : word.x > 0 ? 'start' : 'end'
  const thick = base === 'four-pin' && THICK.has(number)
  return (
    <g>
      <circle cx={hole.x} cy={hole.y} r={thick ? 15 : 12} className={styles.pin} />
      <text x={hole.x} y={hole.y + 5} textAnchor="middle" className={styles.number}>
        {number}
      </text>
      {electrode && (
        <text x={word.x} y={word.y + 5} textAnchor={anchor} className={styles.electrode}>
          {short(electrode)}
        </text>
      )}
    </g>
  )
}
