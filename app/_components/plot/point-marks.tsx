/** The points read, with their boxes to scale. */
import type { PlotPoint } from '@/lib/domain/plot/frame'
import { isEarlier, isLater, type OperatingPoint } from '@/lib/domain/plot/operating-point'
import { pointName, pointNames } from '@/lib/domain/plot/plot-text'
import { type PointCluster, pointClusters } from '@/lib/domain/plot/point-clusters'
import styles from './plate-curves.module.css'
import { type Place, rounded } from './plot-place'

type MarksProps = { readonly place: Place; readonly points: readonly OperatingPoint[]; readonly magnified: boolean }

/** Points closer than this share one name tag. */
const NEAR = 26

const tagOf = ({ sockets, when }: PointCluster): string => pointNames(sockets, when)

function Mark({ place, point, size }: { place: Place; point: OperatingPoint; size: number }) {
  const [x, y] = [place.x(point.at.across), place.y(point.at.up)]
  return (
    <circle
      className={isEarlier(point.when) ? styles.pointBefore : styles.point}
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

/** Height a name takes below a box. */
const LETTERING = 20

/** The hotter half is named above its boxes, the colder half below, right and left in turn, away from the middle. */
function CornerNames({ place: { area, x, y }, points }: { place: Place; points: readonly OperatingPoint[] }) {
  const foot = area.top + area.height
  const sorted = [...points].sort((a, b) => b.at.up - a.at.up)
  return sorted.map((point, rank) => {
    const { box, at } = point
    const above = rank < sorted.length / 2 || y(box.bottom) + LETTERING > foot
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

function Guides({ place: { area, x, y }, at }: { place: Place; at: PlotPoint }) {
  const d = `M${area.left} ${rounded(y(at.up))}H${rounded(x(at.across))}V${area.top + area.height}`
  return <path className={styles.guide} d={d} />
}

export function PointMarks({ place, points, magnified }: MarksProps) {
  const { x, y } = place
  const apart = (a: PlotPoint, b: PlotPoint) => Math.hypot(x(a.across) - x(b.across), y(a.up) - y(b.up))
  const tags = magnified ? [] : pointClusters(points, apart, NEAR)
  return (
    <g>
      {tags.map((tag) => (
        <Guides key={tagOf(tag)} place={place} at={tag.at} />
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
          x={rounded(x(tag.at.across) + 10)}
          y={rounded(y(tag.at.up) + (isLater(tag.when) ? 17 : -9))}
        >
          {tagOf(tag)}
        </text>
      ))}
      {magnified && <CornerNames place={place} points={points} />}
    </g>
  )
}
