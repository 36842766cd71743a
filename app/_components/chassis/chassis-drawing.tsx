/**
 * The amplifier from above, like the layout chart glued inside old cabinets.
 * Every state is said three times: by a word, by the shape of the ring and, for
 * heat alone, by the glow colour. Renders on the server; no script needed.
 */
import { type ArrangedSocket, arrangeChassis } from './arrange-chassis'
import styles from './chassis.module.css'
import { ChassisSheet } from './chassis-sheet'
import { ChassisTable } from './chassis-table'
import {
  type AllChassisWords,
  type ChassisSocketView,
  type ChassisWords,
  spokenSocket,
  withUsualWords,
} from './chassis-view'
import { SocketMark } from './socket-mark'

export type { ChassisSocketView, ChassisWords, SocketState } from './chassis-view'

export type ChassisDrawingProps = {
  /** Make and model, for the title block. */
  readonly title: string
  /** Shown small in the title block: the date, a job number. The first one only. */
  readonly titleLines?: readonly string[]
  readonly sockets: readonly ChassisSocketView[]
  readonly words: ChassisWords
}

function SocketItem({ arranged, words }: { arranged: ArrangedSocket; words: AllChassisWords }) {
  const { socket, place } = arranged
  const spoken = spokenSocket(socket, words)
  const mark = (
    <>
      <title>{spoken}</title>
      <SocketMark {...arranged} />
    </>
  )
  return (
    // biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: a group of a drawing is not interactive
    <g role="listitem" transform={`translate(${place.x.toFixed(1)} ${place.y.toFixed(1)})`}>
      {socket.href ? (
        <a href={socket.href} className={styles.socketLink} aria-label={spoken}>
          {mark}
        </a>
      ) : (
        // biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: a group of a drawing is not interactive
        <g role="img" aria-label={spoken}>
          {mark}
        </g>
      )}
    </g>
  )
}

export function ChassisDrawing({ title, titleLines = [], sockets, words }: ChassisDrawingProps) {
  const all = withUsualWords(words)
  const { layout, sockets: arranged } = arrangeChassis(sockets, all)
  return (
    <div className={styles.figure}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className={styles.scroller} aria-label={title} tabIndex={0}>
        <ChassisSheet title={title} titleLines={titleLines} layout={layout} sockets={sockets} words={all}>
          {/* biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: a group of a drawing is not interactive */}
          <g role="list">
            {arranged.map((one) => (
              <SocketItem key={one.socket.id} arranged={one} words={all} />
            ))}
          </g>
        </ChassisSheet>
      </section>
      <details className={styles.asTable}>
        <summary>{all.asTable}</summary>
        <ChassisTable title={title} sockets={sockets} words={all} />
      </details>
      {/* A closed details element stays closed on paper, so paper and narrow screens get a table of their own. */}
      <div className={styles.tableInFull}>
        <ChassisTable title={title} sockets={sockets} words={all} />
      </div>
    </div>
  )
}
