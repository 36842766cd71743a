/**
 * The stock of a type, plate current against transconductance, a chosen set marked out.
 * Renders on the server; no script needed. Every point drawn stands in the table too; points
 * are links, so they are reached by keyboard and name themselves.
 */
import Link from 'next/link'
import { useId } from 'react'
import { tickText } from '@/lib/domain/plot/plot-text'
import type { StockScatter as Scatter, StockPoint } from '@/lib/domain/plot/stock-scatter'
import { capital, type Words } from '@/lib/domain/words'
import styles from './plate-curves.module.css'
import { fineRulings, type Place, placeIn, rounded, tickRulings } from './plot-place'
import scatterStyles from './stock-scatter.module.css'

type Props = {
  readonly scatter: Scatter
  /** "6L6 in stock, at plate 250 V, screen 250 V, grid −14 V" */
  readonly title: string
  readonly words: Words
}

const AREA = { left: 70, top: 20, width: 620, height: 360 }
const TABLE_ROWS = 150

export function StockScatter({ scatter, title, words }: Props) {
  const id = useId()
  const place = placeIn(AREA, scatter.frame)
  const chosen = scatter.points.filter((point) => point.chosen)
  return (
    <figure className={styles.figure}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className={styles.scroller} aria-label={title} tabIndex={0}>
        {/* biome-ignore lint/a11y/useSemanticElements: a drawing that holds links is a group; as an image it would hide them */}
        <svg className={styles.whole} viewBox="0 0 720 450" role="group" aria-labelledby={`${id}-title ${id}-desc`}>
          <title id={`${id}-title`}>{title}</title>
          <desc id={`${id}-desc`}>{descriptionOf(scatter, chosen, words)}</desc>
          <Ruling place={place} words={words} />
          {scatter.points.map((point, at) => (
            <Mark
              key={point.tubeId}
              place={place}
              point={point}
              reachable={at >= scatter.points.length - scatter.reachable}
              below={at % 2 === 0}
            />
          ))}
        </svg>
      </section>
      <figcaption>
        <p className="small soft">
          {title}. {chosen.length > 0 && `The set shown first is drawn full and named: ${namesOf(chosen)}.`}
          {scatter.left > 0 && ` ${scatter.left} more are not drawn.`}
        </p>
        <details>
          <summary className={styles.fold}>The points in figures</summary>
          <PointTable points={[...scatter.points].reverse()} words={words} />
        </details>
      </figcaption>
    </figure>
  )
}

const namesOf = (points: readonly StockPoint[]): string => points.map(({ mark }) => mark).join(', ')

function descriptionOf({ points, frame, left }: Scatter, chosen: readonly StockPoint[], { tube, tubes, plate }: Words) {
  const { across, up } = frame
  const count = `${points.length} ${points.length === 1 ? tube : tubes}`
  const set = chosen.length > 0 ? ` Chosen: ${namesOf(chosen)}.` : ''
  return `${count}, ${plate} current from ${tickText(across.from)} to ${tickText(across.to)} mA, transconductance from ${tickText(up.from)} to ${tickText(up.to)} mA/V.${set}${left > 0 ? ` ${left} more are not drawn.` : ''}`
}

function Ruling({ place, words }: { place: Place; words: Words }) {
  const { area, frame, x, y } = place
  const foot = area.top + area.height
  return (
    <>
      <rect className={styles.sheet} x={area.left} y={area.top} width={area.width} height={area.height} />
      <path className={styles.fine} d={fineRulings(place)} />
      <path className={styles.ruling} d={tickRulings(place)} />
      <rect className={styles.border} x={area.left} y={area.top} width={area.width} height={area.height} />
      <g className={styles.scale}>
        {frame.across.ticks.map((value) => (
          <text key={value} x={rounded(x(value))} y={foot + 20} textAnchor="middle">
            {tickText(value)}
          </text>
        ))}
        {frame.up.ticks.map((value) => (
          <text key={value} x={area.left - 9} y={rounded(y(value) + 5)} textAnchor="end">
            {tickText(value)}
          </text>
        ))}
      </g>
      <text className={styles.axis} x={area.left + area.width / 2} y={foot + 48} textAnchor="middle">
        {capital(words.plate)} current, mA
      </text>
      <text
        className={styles.axis}
        transform={`translate(18 ${area.top + area.height / 2}) rotate(-90)`}
        textAnchor="middle"
      >
        Transconductance, mA/V
      </text>
    </>
  )
}

const figuresOf = ({ mark, designation, at, carriedFrom }: StockPoint): string =>
  `${mark}, ${designation}: ${at.across.toFixed(1)} mA, ${at.up.toFixed(2)} mA/V${carriedFrom === undefined ? '' : `, carried from ${carriedFrom}`}`

type MarkProps = {
  readonly place: Place
  readonly point: StockPoint
  readonly reachable: boolean
  /** Its name: chosen ones stand close together, so every other name goes below. */
  readonly below: boolean
}

function Mark({ place, point, reachable, below }: MarkProps) {
  const { at, chosen, tubeId, mark } = point
  const [x, y] = [place.x(at.across), place.y(at.up)]
  const circle = (
    <circle className={chosen ? styles.point : styles.pointBefore} cx={rounded(x)} cy={rounded(y)} r={chosen ? 6 : 3.5}>
      <title>{figuresOf(point)}</title>
    </circle>
  )
  if (!reachable) return circle
  return (
    <a className={scatterStyles.stop} href={`/stock/${tubeId}`} aria-label={figuresOf(point)}>
      {circle}
      {chosen && (
        <text className={styles.name} x={rounded(x + 10)} y={rounded(below ? y + 18 : y - 8)}>
          {mark}
        </text>
      )}
    </a>
  )
}

/** Chosen ones first. */
function PointTable({ points, words }: { points: readonly StockPoint[]; words: Words }) {
  return (
    <>
      <div className="table-scroll">
        <table>
          <thead>
            <tr>
              <th>Mark</th>
              <th>Type</th>
              <th className="num">{capital(words.plate)} current</th>
              <th className="num">Transconductance</th>
              <th>In the set</th>
            </tr>
          </thead>
          <tbody>
            {points.slice(0, TABLE_ROWS).map(({ tubeId, mark, designation, at, chosen, carriedFrom }) => (
              <tr key={tubeId}>
                <td>
                  <Link href={`/stock/${tubeId}`}>{mark}</Link>
                </td>
                <td>
                  {designation}
                  {carriedFrom !== undefined && <span className="soft">, carried from {carriedFrom}</span>}
                </td>
                <td className="num">{at.across.toFixed(1)} mA</td>
                <td className="num">{at.up.toFixed(2)} mA/V</td>
                <td>{chosen ? 'yes' : ''}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {points.length > TABLE_ROWS && (
        <p className="soft">And {points.length - TABLE_ROWS} more; the stock list shows each with its test.</p>
      )}
    </>
  )
}
