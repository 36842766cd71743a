/** The sheet itself: chassis outline, edges, landmarks and title strip; the sockets are its children. */
import type { ReactNode, Ref } from 'react'
import type { ChassisLayout, Rect } from '@/lib/domain/amp/chassis-layout'
import styles from './chassis.module.css'
import type { AllChassisWords, ChassisSocketView } from './chassis-view'
import { LandmarkBlock } from './landmark-block'
import { TITLE_STRIP_HEIGHT, TitleStrip } from './title-strip'

const FOLD = 14

function Screws({ outline }: { outline: Rect }) {
  const { x, y, width, height } = outline
  const corners = [
    [x + 9, y + 9],
    [x + width - 9, y + 9],
    [x + 9, y + height - 9],
    [x + width - 9, y + height - 9],
  ] as const
  return corners.map(([cx, cy], index) => (
    <g key={`${cx} ${cy}`} transform={`translate(${cx} ${cy}) rotate(${25 + index * 40})`}>
      <circle className={styles.screw} r={5.5} />
      <path className={styles.screwSlot} d="M -5 0 H 5" />
    </g>
  ))
}

/** Division marks along the folded edges, every tenth of the breadth. */
function Divisions({ outline }: { outline: Rect }) {
  const { x, y, width, height } = outline
  const marks = Array.from({ length: 9 }, (_, index) => {
    const at = x + 84 + ((width - 168) * (index + 1)) / 10
    return `M ${at} ${y} v 6 M ${at} ${y + height} v -6`
  })
  return <path className={styles.division} d={marks.join(' ')} />
}

/** The front panel edge-on, with its knobs. */
function FrontEdge({ outline, word }: { outline: Rect; word: string }) {
  const y = outline.y + outline.height
  const knobs = [150, 230, 310, 690, 770, 850]
  return (
    <>
      <rect className={styles.panelEdge} x={outline.x - 4} y={y} width={outline.width + 8} height={7} />
      <path
        className={styles.knob}
        d={knobs.map((x) => `M ${x - 11} ${y + 9} h 22 l -3 13 h -16 Z M ${x} ${y + 11} v 9`).join(' ')}
      />
      <text className={styles.edgeWord} x={500} y={y + 30}>
        {word}
      </text>
    </>
  )
}

/** Jacks, cord and fuse sticking out at the back. */
function RearEdge({ outline, word }: { outline: Rect; word: string }) {
  const { y } = outline
  const jacks = [150, 200, 250]
  return (
    <>
      <path
        className={styles.knob}
        d={jacks.map((x) => `M ${x - 9} ${y - 1} v -7 h 4 v -7 h 10 v 7 h 4 v 7 Z`).join(' ')}
      />
      <path
        className={styles.knob}
        d={`M 760 ${y - 1} v -12 h 20 v 12 Z M 840 ${y - 1} v -9 h 34 v 9 Z M 857 ${y - 10} c 0 -14 22 -4 26 -18`}
      />
      <text className={styles.edgeWord} x={500} y={y - 14}>
        {word}
      </text>
    </>
  )
}

type ChassisSheetProps = {
  readonly title: string
  readonly titleLines: readonly string[]
  readonly layout: ChassisLayout
  readonly sockets: readonly ChassisSocketView[]
  readonly words: AllChassisWords
  readonly svgRef?: Ref<SVGSVGElement>
  readonly children: ReactNode
}

export function ChassisSheet({ title, titleLines, layout, sockets, words, svgRef, children }: ChassisSheetProps) {
  const { outline } = layout
  const fold = {
    x: outline.x + FOLD,
    y: outline.y + FOLD,
    width: outline.width - 2 * FOLD,
    height: outline.height - 2 * FOLD,
  }
  return (
    <svg
      ref={svgRef}
      className={styles.sheet}
      viewBox={`0 0 ${layout.width} ${layout.height + TITLE_STRIP_HEIGHT}`}
      role="group"
      aria-label={`${title}, ${words.fromAbove}`}
    >
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of a drawing takes no focus */}
      <g aria-hidden="true">
        <rect className={styles.outline} {...outline} rx={6} />
        <Divisions outline={outline} />
        <rect className={styles.fold} {...fold} rx={3} />
        <Screws outline={outline} />
        <RearEdge outline={outline} word={words.rear} />
        <FrontEdge outline={outline} word={words.front} />
        {layout.landmarks.map((landmark) => (
          <LandmarkBlock key={landmark.kind} landmark={landmark} words={words} />
        ))}
      </g>
      {children}
      <TitleStrip sockets={sockets} words={words} top={layout.height + 6} title={title} titleLines={titleLines} />
    </svg>
  )
}
