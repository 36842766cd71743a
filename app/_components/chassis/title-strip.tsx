/** Foot of the drawing: what the rings mean, and the title block in the corner. */
import styles from './chassis.module.css'
import type { AllChassisWords, ChassisSocketView, SocketState } from './chassis-view'
import { HeatRing } from './heat-ring'
import { brokenLines, estimatedWidth } from './lettering'

export const TITLE_STRIP_HEIGHT = 120

const STATES: readonly SocketState[] = ['within', 'over', 'under', 'uncertain', 'not-measured']
const BLOCK = { x: 652, width: 340, height: 108 } as const
const KEY_COLUMNS = [26, 238, 450] as const

type KeyEntry = {
  readonly name: string
  readonly state: SocketState
  readonly percent: number | null
  readonly text: string
}

/** The states there are on this chassis, in a fixed order, in the words it uses. */
function keyEntries(sockets: readonly ChassisSocketView[], words: AllChassisWords): readonly KeyEntry[] {
  const states = STATES.flatMap((state) => {
    const found = sockets.find((socket) => socket.state === state)
    return found ? [{ name: state, state, percent: null, text: found.stateWord }] : []
  })
  if (sockets.every((socket) => socket.percentOfRating === null)) return states
  return [...states, { name: 'heat', state: 'within', percent: 70, text: words.heatScale }]
}

function Key({ sockets, words, top }: TitleStripProps) {
  return (
    <g>
      {keyEntries(sockets, words).map(({ name, state, percent, text }, index) => {
        const x = KEY_COLUMNS[index % 3] ?? 0
        const y = top + 20 + Math.floor(index / 3) * 36
        return (
          <g key={name}>
            <g transform={`translate(${x} ${y}) scale(0.72)`}>
              <HeatRing radius={7} state={state} percent={percent} limit={90} />
            </g>
            <KeyText x={x + 24} y={y} text={text} width={164} />
          </g>
        )
      })}
    </g>
  )
}

function KeyText({ x, y, text, width }: { x: number; y: number; text: string; width: number }) {
  const lines = brokenLines(text, 16, width)
  return lines.map((line, index) => (
    <text key={line.text} className={styles.keyWord} x={x} y={y + 6 + (index - (lines.length - 1) / 2) * 17}>
      {line.text}
    </text>
  ))
}

export type TitleStripProps = {
  readonly sockets: readonly ChassisSocketView[]
  readonly words: AllChassisWords
  readonly top: number
}

type TitleProps = TitleStripProps & { readonly title: string; readonly titleLines: readonly string[] }

/** One large line, or two small ones for a long name. */
function TitleName({ title, y }: { title: string; y: number }) {
  const room = BLOCK.width - 28
  const large = brokenLines(title, 23, room)
  const lines = large.length === 1 ? large : brokenLines(title, 17.5, room).slice(0, 2)
  return lines.map((line, index) => (
    <text
      key={line.text}
      className={large.length === 1 ? styles.title : styles.titleSmall}
      x={BLOCK.x + 14}
      y={lines.length === 1 ? y + 30 : y + 19 + index * 19}
      textLength={line.squeezed ? room : undefined}
      lengthAdjust="spacingAndGlyphs"
    >
      {line.text}
    </text>
  ))
}

function TitleBlock({ title, titleLines, words, top }: Omit<TitleProps, 'sockets'>) {
  const right = BLOCK.x + BLOCK.width
  const room = BLOCK.width - 42 - estimatedWidth(words.fromAbove, 16)
  return (
    <g>
      <rect className={styles.titleFrame} x={BLOCK.x} y={top} width={BLOCK.width} height={BLOCK.height} />
      <path
        className={styles.titleRule}
        d={`M ${BLOCK.x} ${top + 46} H ${right} M ${BLOCK.x} ${top + 77} H ${right}`}
      />
      <TitleName title={title} y={top} />
      <text className={styles.keyWord} x={BLOCK.x + 14} y={top + 67}>
        {words.fromAbove}
      </text>
      <circle className={styles.pinOne} cx={BLOCK.x + 20} cy={top + 92} r={5.5} />
      <circle className={styles.pin} cx={BLOCK.x + 20} cy={top + 92} r={2.4} />
      <text className={styles.keyWord} x={BLOCK.x + 34} y={top + 98}>
        {words.pinOne}
      </text>
      {titleLines.slice(0, 1).map((line) => (
        <text
          key={line}
          className={styles.keyWord}
          x={right - 14}
          y={top + 67}
          textAnchor="end"
          textLength={estimatedWidth(line, 16) > 1.05 * room ? room : undefined}
          lengthAdjust="spacingAndGlyphs"
        >
          {line}
        </text>
      ))}
    </g>
  )
}

export function TitleStrip({ sockets, words, top, title, titleLines }: TitleProps) {
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of a drawing takes no focus
    <g aria-hidden="true">
      <Key sockets={sockets} words={words} top={top} />
      <TitleBlock title={title} titleLines={titleLines} words={words} top={top} />
    </g>
  )
}
