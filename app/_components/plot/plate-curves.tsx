/**
 * Plate curves of a type with the idle points read on it, like a page of a handbook
 * curve sheet. Renders on the server; no script needed. Everything drawn is also said:
 * in the description, in the legend's words and in the tables.
 */
import { useId } from 'react'
import type { PlateSheet } from '@/lib/domain/plot/plate-sheet'
import {
  acrossTitle,
  plotDescription,
  plotLegend,
  plotNotes,
  plotTitle,
  ratingText,
  screenText,
  upTitle,
} from '@/lib/domain/plot/plot-text'
import type { Words } from '@/lib/domain/words'
import styles from './plate-curves.module.css'
import { PlotFrame } from './plot-frame'
import { LegendMark } from './plot-legend'
import { type Area, placeIn } from './plot-place'
import { CurvesTable, PointsTable } from './plot-tables'

type PlateCurvesProps = { readonly sheet: PlateSheet; readonly words: Words }

const WHOLE: Area = { left: 66, top: 92, width: 640, height: 430 }
const GLASS: Area = { left: 44, top: 62, width: 210, height: 196 }

function WholeSheet({ sheet, words }: PlateCurvesProps) {
  const id = useId()
  const { rating } = sheet
  return (
    <svg
      className={styles.whole}
      viewBox="0 0 780 584"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
      xmlns="http://www.w3.org/2000/svg"
    >
      <title id={`${id}-title`}>{plotTitle(sheet, words)}</title>
      <desc id={`${id}-desc`}>{plotDescription(sheet, words)}</desc>
      <text className={styles.type} x={WHOLE.left} y={34}>
        {sheet.designation}
      </text>
      <text className={styles.heading} x={WHOLE.left} y={58}>
        Average {words.plate} characteristics
      </text>
      <text className={styles.heading} x={WHOLE.left + WHOLE.width} y={58} textAnchor="end">
        {screenText(sheet)}
      </text>
      <PlotFrame
        place={placeIn(WHOLE, sheet.whole.frame)}
        view={sheet.whole}
        points={sheet.points}
        loadPath={sheet.loadPath}
        magnified={false}
        heatWord={rating ? `${ratingText(rating)} rating` : ''}
      />
      <text className={styles.curveHead} x={WHOLE.left + WHOLE.width + 13} y={WHOLE.top - 8}>
        Grid
      </text>
      <text
        className={styles.axis}
        x={WHOLE.left + WHOLE.width / 2}
        y={WHOLE.top + WHOLE.height + 48}
        textAnchor="middle"
      >
        {acrossTitle(words)}
      </text>
      <text
        className={styles.axis}
        transform={`translate(20 ${WHOLE.top + WHOLE.height / 2}) rotate(-90)`}
        textAnchor="middle"
      >
        {upTitle(words)}
      </text>
    </svg>
  )
}

function UnderTheGlass({ sheet }: PlateCurvesProps) {
  const { glass } = sheet
  if (!glass) return null
  return (
    <svg className={styles.glass} viewBox="0 0 330 286" aria-hidden="true">
      <text className={styles.heading} x={GLASS.left} y={22}>
        Under the glass
      </text>
      <PlotFrame
        place={placeIn(GLASS, glass.frame)}
        view={glass}
        points={sheet.points}
        loadPath={null}
        magnified
        heatWord=""
      />
    </svg>
  )
}

export function PlateCurves({ sheet, words }: PlateCurvesProps) {
  return (
    <figure className={styles.figure}>
      <div className={styles.drawings}>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
        <section className={styles.scroller} aria-label={plotTitle(sheet, words)} tabIndex={0}>
          <WholeSheet sheet={sheet} words={words} />
        </section>
        <div className={styles.beside}>
          <UnderTheGlass sheet={sheet} words={words} />
          <ul className={styles.legend}>
            {plotLegend(sheet, words).map(({ kind, text }) => (
              <li key={kind}>
                <LegendMark kind={kind} />
                {text}
              </li>
            ))}
          </ul>
        </div>
      </div>
      <figcaption>
        {plotNotes(sheet, words).map((note) => (
          <p key={note} className="small soft">
            {note}
          </p>
        ))}
        {sheet.points.length > 0 && <PointsTable sheet={sheet} words={words} />}
        <details>
          <summary className={styles.fold}>The curves in figures</summary>
          <CurvesTable sheet={sheet} words={words} />
        </details>
      </figcaption>
    </figure>
  )
}
