/** One socket of the drawing: base from above, ring, lettering. Drawn about its own centre. */
import { pinsFromAbove } from '@/lib/domain/amp/chassis-pins'
import type { ArrangedSocket, LabelLine } from './arrange-chassis'
import styles from './chassis.module.css'
import { HeatRing } from './heat-ring'
import { estimatedWidth } from './lettering'

const LINE_PITCH = 19

/** Octal: the spigot hole with its key at 12 o'clock. */
function Spigot({ radius }: { radius: number }) {
  const key = 4.5
  const edge = Math.sqrt(radius ** 2 - key ** 2)
  return (
    <path
      className={styles.spigot}
      d={`M ${-key} ${-edge} V ${-edge - 6} H ${key} V ${-edge} A ${radius} ${radius} 0 1 1 ${-key} ${-edge} Z`}
    />
  )
}

function Pins({ socket, place }: Pick<ArrangedSocket, 'socket' | 'place'>) {
  const circle = place.radius - 9
  return (
    <>
      {pinsFromAbove(socket.base).map(({ number, x, y }) => (
        <g key={number} transform={`translate(${(x * circle).toFixed(2)} ${(y * circle).toFixed(2)})`}>
          {number === 1 && <circle className={styles.pinOne} r={5.5} />}
          <circle className={styles.pin} r={2.4} />
        </g>
      ))}
    </>
  )
}

/** The bulb lit from within: three discs, so that no gradient needs a name of its own on the page. */
function Bulb({ radius, percent }: { radius: number; percent: number }) {
  const heat = Math.min(Math.max(percent, 0), 125) / 125
  return (
    <>
      {[0.96, 0.72, 0.46].map((share) => (
        <circle key={share} className={styles.bulb} r={radius * share} opacity={(0.05 + 0.15 * heat).toFixed(2)} />
      ))}
    </>
  )
}

function Position({ position, radius }: { position: string; radius: number }) {
  const size = radius > 40 ? 23 : 20
  const room = (radius - 15) * 2
  const squeezed = estimatedWidth(position, size) > room
  return (
    <text
      className={styles.position}
      fontSize={size}
      y={size * 0.36}
      textLength={squeezed ? room : undefined}
      lengthAdjust="spacingAndGlyphs"
    >
      {`${position} `}
    </text>
  )
}

const CLASS_OF_LINE: Record<LabelLine['kind'], string | undefined> = {
  type: styles.type,
  role: styles.role,
  state: styles.state,
  reading: styles.reading,
}

function Lettering({ place, lines }: Pick<ArrangedSocket, 'place' | 'lines'>) {
  const { label, side } = place
  const slack = label.height - 4 - lines.length * LINE_PITCH
  const top = label.y - place.y + (side === 'below' ? 0 : side === 'above' ? slack : slack / 2)
  const left = label.x - place.x
  const x = side === 'right' ? left : side === 'left' ? left + label.width : left + label.width / 2
  const anchor = side === 'right' ? 'start' : side === 'left' ? 'end' : 'middle'
  return (
    <g textAnchor={anchor}>
      {lines.map((line, index) => (
        <text
          // biome-ignore lint/suspicious/noArrayIndexKey: lines have no identity but their order
          key={index}
          className={CLASS_OF_LINE[line.kind]}
          x={x}
          y={top + 16 + index * LINE_PITCH}
          textLength={line.squeezed ? label.width : undefined}
          lengthAdjust="spacingAndGlyphs"
        >
          {/* The space is not drawn; it parts the lines when they are read as one text. */}
          {`${line.text} `}
        </text>
      ))}
    </g>
  )
}

function FocusFrame({ place }: Pick<ArrangedSocket, 'place'>) {
  const { label, reach } = place
  const left = Math.min(-reach, label.x - place.x) - 2
  const top = Math.min(-reach, label.y - place.y) - 3
  const right = Math.max(reach, label.x + label.width - place.x) + 2
  const bottom = Math.max(reach, label.y + label.height - place.y) + 1
  return <rect className={styles.focusFrame} x={left} y={top} width={right - left} height={bottom - top} rx={8} />
}

export function SocketMark({ socket, place, lines }: ArrangedSocket) {
  const { radius } = place
  const percent = socket.percentOfRating
  return (
    <>
      <FocusFrame place={place} />
      <HeatRing radius={radius} state={socket.state} percent={percent} limit={socket.limitPercent ?? 100} />
      <circle className={styles.socket} r={radius} />
      {percent !== null && <Bulb radius={radius} percent={percent} />}
      {socket.base === 'octal' && <Spigot radius={radius * 0.6} />}
      <Pins socket={socket} place={place} />
      <Position position={socket.position} radius={radius} />
      <Lettering place={place} lines={lines} />
    </>
  )
}
