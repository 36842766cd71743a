/** One ruled frame: paper, fine grid, curves with their grid volts, heat, load line, points and boxes. */
import type { LoadPath } from '@/lib/domain/plot/load-path'
import type { OperatingPoint } from '@/lib/domain/plot/operating-point'
import type { PlotView } from '@/lib/domain/plot/plate-sheet'
import { gridText, tickText } from '@/lib/domain/plot/plot-text'
import { spreadLabels } from '@/lib/domain/plot/spread-labels'
import styles from './plate-curves.module.css'
import { fineRulings, type Place, pathOf, rounded, tickRulings } from './plot-place'
import { PointMarks } from './point-marks'

type FrameProps = {
  readonly place: Place
  readonly view: PlotView
  readonly points: readonly OperatingPoint[]
  readonly loadPath: LoadPath | null
  /** Boxes large, each point with its own name. */
  readonly magnified: boolean
  readonly heatWord: string
}

/** Height of a label's line. */
const LABEL_GAP = 17

function Scales({ place }: { place: Place }) {
  const { area, frame, x, y } = place
  return (
    <g className={styles.scale}>
      {frame.across.ticks.map((volts) => (
        <text key={volts} x={rounded(x(volts))} y={area.top + area.height + 20} textAnchor="middle">
          {tickText(volts)}
        </text>
      ))}
      {frame.up.ticks.map((milliamps) => (
        <text key={milliamps} x={area.left - 9} y={rounded(y(milliamps) + 5)} textAnchor="end">
          {tickText(milliamps)}
        </text>
      ))}
    </g>
  )
}

function CurveLabels({ place, view }: { place: Place; view: PlotView }) {
  const { area, x, y } = place
  const right = area.left + area.width
  const ends = view.curves.filter(({ leaves }) => leaves === 'right')
  // Heights above the foot of the frame: rising from the coldest to the hottest curve.
  const heights = ends.map(({ end }) => area.top + area.height - y(end.up))
  const spread = spreadLabels(heights, LABEL_GAP)
  return (
    <g className={styles.curveLabel}>
      {ends.map(({ gridVolts, end }, i) => {
        const at = area.top + area.height - (spread[i] ?? 0)
        return (
          <g key={gridVolts}>
            <path className={styles.leader} d={`M${right} ${rounded(y(end.up))}L${right + 10} ${rounded(at)}`} />
            <text x={right + 13} y={rounded(at + 5)}>
              {gridText(gridVolts)}
            </text>
          </g>
        )
      })}
      {view.curves
        .filter(({ leaves }) => leaves === 'top')
        .map(({ gridVolts, end }) => (
          <text key={gridVolts} x={rounded(x(end.across))} y={area.top - 8} textAnchor="middle">
            {gridText(gridVolts)}
          </text>
        ))}
    </g>
  )
}

/** Shares of the width, the likeliest to be free first. */
const HEAT_WORD_PLACES = [0.72, 0.84, 0.58, 0.46, 0.36]
const FREE = 130

type HeatWordProps = Pick<FrameProps, 'place' | 'view' | 'points'> & { readonly word: string }

/** On the hot side of the limit, away from the points. */
function HeatWord({ place, view, points, word }: HeatWordProps) {
  const { from, to } = view.frame.across
  const anchors = HEAT_WORD_PLACES.flatMap(
    (share) => view.heat?.line.findLast(({ across }) => across <= from + share * (to - from)) ?? [],
  ).map(({ across, up }) => ({ x: place.x(across) + 8, y: place.y(up) - 9 }))
  const gap = ({ x, y }: { x: number; y: number }) =>
    Math.min(...points.map(({ at }) => Math.hypot(place.x(at.across) - x, place.y(at.up) - y)))
  const anchor = anchors.find((one) => gap(one) > FREE) ?? anchors[0]
  if (!anchor || word === '') return null
  return (
    <text className={styles.heatWord} x={rounded(anchor.x)} y={rounded(anchor.y)}>
      {word}
    </text>
  )
}

export function PlotFrame({ place, view, points, loadPath, magnified, heatWord }: FrameProps) {
  const { area } = place
  const { heat, curves } = view
  const outline = { x: area.left, y: area.top, width: area.width, height: area.height }
  return (
    <g>
      <rect className={styles.sheet} {...outline} />
      {heat && heat.region.length > 0 && <path className={styles.hot} d={`${pathOf(place, heat.region)}Z`} />}
      <path className={styles.fine} d={fineRulings(place)} />
      <path className={styles.ruling} d={tickRulings(place)} />
      {curves.map(({ gridVolts, line }) => (
        <path key={gridVolts} className={styles.curve} d={pathOf(place, line)} />
      ))}
      {heat && <path className={styles.limit} d={pathOf(place, heat.line)} />}
      {loadPath && !magnified && <path className={styles.load} d={pathOf(place, loadPath.points)} />}
      <rect className={styles.border} {...outline} />
      <HeatWord place={place} view={view} points={points} word={heatWord} />
      <Scales place={place} />
      <CurveLabels place={place} view={view} />
      <PointMarks place={place} points={points} magnified={magnified} />
    </g>
  )
}
