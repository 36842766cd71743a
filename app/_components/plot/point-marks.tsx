/** The points read, with their boxes to scale. */
import type { OperatingPoint } from '@/lib/domain/plot/operating-point'
import { pointName, pointNames } from '@/lib/domain/plot/plot-text'
import styles from './plate-curves.module.css'
import { type Place, rounded } from './plot-place'

type MarksProps = { readonly place: Place; readonly points: readonly OperatingPoint[]; readonly magnified: boolean }

/** Points closer than this share one name tag. */
const NEAR = 26

type Cluster = Pick<OperatingPoint, 'when'> & {
  readonly x: number
  readonly y: number
  readonly sockets: readonly string[]
}

/** Of one round each. */
function clusters({ x, y }: Place, points: readonly OperatingPoint[]): Cluster[] {
  const found: Cluster[] = []
  for (const { at, socket, when } of points) {
    const [px, py] = [x(at.across), y(at.up)]
    const near = found.findIndex((one) => one.when === when && Math.hypot(one.x - px, one.y - py) < NEAR)
    const cluster = found[near]
    if (cluster) found[near] = { ...cluster, sockets: [...cluster.sockets, socket] }
    else found.push({ x: px, y: py, when, sockets: [socket] })
  }
  return found
}

const tagOf = ({ sockets, when }: Cluster): string => pointNames(sockets, when)

function Mark({ place, point, size }: { place: Place; point: OperatingPoint; size: number }) {
  const [x, y] = [place.x(point.at.across), place.y(point.at.up)]
  return (
    <circle
      className={point.when === 'before' ? styles.pointBefore : styles.point}
      cx={rounded(x)}
      cy={rounded(y)}
      r={size}
    />
  )
}

function Box({ place: { x, y }, box }: { place: Place; box: OperatingPoint['box'] }) {
  return (
    <rect
      className={styles.box}
      x={rounded(x(box.left))}
      y={rounded(y(box.top))}
      width={rounded(x(box.right) - x(box.left))}
      height={rounded(y(box.bottom) - y(box.top))}
    />
  )
}

/** The hotter half is named above its boxes, the colder half below, right and left in turn, away from the middle. */
function CornerNames({ place: { x, y }, points }: { place: Place; points: readonly OperatingPoint[] }) {
  const sorted = [...points].sort((a, b) => b.at.up - a.at.up)
  return sorted.map((point, rank) => {
    const { box, at } = point
    const above = rank < sorted.length / 2
    const right = rank % 2 === 0
    return (
      <text
        key={pointName(point)}
        className={styles.name}
        x={rounded(x(at.across) + (right ? 3 : -3))}
        y={rounded(above ? y(box.top) - 5 : y(box.bottom) + 16)}
        textAnchor={right ? 'start' : 'end'}
      >
        {pointName(point)}
      </text>
    )
  })
}

function Guides({ place: { area }, at }: { place: Place; at: Cluster }) {
  const d = `M${area.left} ${rounded(at.y)}H${rounded(at.x)}V${area.top + area.height}`
  return <path className={styles.guide} d={d} />
}

export function PointMarks({ place, points, magnified }: MarksProps) {
  const tags = magnified ? [] : clusters(place, points)
  return (
    <g>
      {tags.map((tag) => (
        <Guides key={tagOf(tag)} place={place} at={tag} />
      ))}
      {points.map((point) => (
        <Box key={pointName(point)} place={place} box={point.box} />
      ))}
      {points.map((point) => (
        <Mark key={pointName(point)} place={place} point={point} size={magnified ? 4.5 : 4} />
      ))}
      {tags.map((tag) => (
        <text
          key={tagOf(tag)}
          className={styles.name}
          x={rounded(tag.x + 10)}
          y={rounded(tag.when === 'after' ? tag.y + 17 : tag.y - 9)}
        >
          {tagOf(tag)}
        </text>
      ))}
      {magnified && <CornerNames place={place} points={points} />}
    </g>
  )
}
