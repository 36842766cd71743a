/**
 * The ring round a socket: a meter scale of dissipation where per cent of the
 * rating is known, and in every case the verdict as a shape.
 *
 *   within  two fine circles          over       notch past the limit, triangle up
 *   under   triangle down             uncertain  broken circles, plus-minus sign
 *   not measured  one thin circle
 */
import styles from './chassis.module.css'
import type { SocketState } from './chassis-view'

type HeatRingProps = {
  readonly radius: number
  readonly state: SocketState
  readonly percent: number | null
  readonly limit: number
}

/** The scale runs clockwise from lower left to lower right and ends at this per cent of the rating. */
const FULL_SCALE = 125
const SCALE_START = -135
const SCALE_SWEEP = 270

const degreesAt = (percent: number): number =>
  SCALE_START + (Math.min(Math.max(percent, 0), FULL_SCALE) / FULL_SCALE) * SCALE_SWEEP

const rounded = (value: number): string => value.toFixed(2)

/** Degrees clockwise from 12 o'clock. */
function onCircle(radius: number, degrees: number): string {
  const angle = (degrees * Math.PI) / 180
  return `${rounded(radius * Math.sin(angle))} ${rounded(-radius * Math.cos(angle))}`
}

function arc(radius: number, from: number, to: number): string {
  const large = to - from > 180 ? 1 : 0
  return `M ${onCircle(radius, from)} A ${radius} ${radius} 0 ${large} 1 ${onCircle(radius, to)}`
}

const tick = (from: number, to: number, degrees: number): string =>
  `M ${onCircle(from, degrees)} L ${onCircle(to, degrees)}`

function Scale({ radius, percent, limit }: { radius: number; percent: number; limit: number }) {
  const upTo = degreesAt(percent)
  const limitAt = degreesAt(limit)
  // A cool tube must still show on the scale, so intensity starts at a third.
  const intensity = 0.4 + 0.6 * Math.min(Math.max(percent / limit, 0), 1)
  return (
    <>
      <path className={styles.heatHalo} d={arc(radius + 9, SCALE_START, upTo)} opacity={rounded(intensity)} />
      <path className={styles.heat} d={arc(radius + 9, SCALE_START, upTo)} opacity={rounded(intensity)} />
      {percent > limit && <path className={styles.notch} d={arc(radius + 11, limitAt, Math.max(upTo, limitAt + 4))} />}
      <path
        className={styles.fineTick}
        d={[0, 25, 50, 75, 100].map((at) => tick(radius + 5, radius + 13, degreesAt(at))).join(' ')}
      />
      <path className={styles.limitTickBed} d={tick(radius + 2, radius + 18, limitAt)} />
      <path className={styles.limitTick} d={tick(radius + 2, radius + 18, limitAt)} />
    </>
  )
}

/** Sits in the open part of the scale, at 6 o'clock. */
export function StateSign({ state, y }: { state: SocketState; y: number }) {
  if (state === 'over') return <path className={styles.signOver} d={`M 0 ${y - 10} L 12 ${y + 9} L -12 ${y + 9} Z`} />
  if (state === 'under') return <path className={styles.signUnder} d={`M 0 ${y + 10} L 12 ${y - 9} L -12 ${y - 9} Z`} />
  if (state === 'uncertain') {
    return (
      <>
        <rect className={styles.signBed} x={-9} y={y - 10} width={18} height={20} />
        <path className={styles.signLine} d={`M -6 ${y - 3} H 6 M 0 ${y - 9} V ${y + 3} M -6 ${y + 8} H 6`} />
      </>
    )
  }
  return null
}

export function HeatRing({ radius, state, percent, limit }: HeatRingProps) {
  if (state === 'not-measured' && percent === null) return <circle className={styles.thinRing} r={radius + 9} />
  const line = state === 'uncertain' ? styles.brokenRing : styles.ring
  return (
    <>
      <circle className={line} r={radius + 5} />
      <circle className={line} r={radius + 13} />
      {percent !== null && <Scale radius={radius} percent={percent} limit={limit} />}
      <StateSign state={state} y={radius + 7} />
    </>
  )
}
