'use client'
/**
 * The same drawing with sockets that can be moved: by hand (mouse, pen, finger),
 * by arrow keys, or by typing the two numbers. Only the numbers go to the server.
 */
import { useRef, useState } from 'react'
import { pointAt } from '@/lib/domain/amp/chassis-frame'
import type { ChassisLayout } from '@/lib/domain/amp/chassis-layout'
import type { ArrangedSocket } from './arrange-chassis'
import styles from './chassis.module.css'
import { ChassisSheet } from './chassis-sheet'
import { type ChassisSocketView, type ChassisWords, spokenSocket } from './chassis-view'
import { CrossHair, ScaleGrid } from './drag-guides'
import { type Drag, dragHandlers, keyHandler, type Movable, useMovableSockets } from './movable-sockets'
import { PlaceFields } from './place-fields'
import { SocketMark } from './socket-mark'
import { isWrongPlace, type TypedPlaces } from './socket-places'

export type ChassisEditorProps = {
  readonly title: string
  readonly titleLines?: readonly string[]
  readonly sockets: readonly ChassisSocketView[]
  readonly words: ChassisWords
  /** Boxes are named `<fieldPrefix>.N.across` and `<fieldPrefix>.N.depth`, N counting from 0 in the order given. */
  readonly fieldPrefix?: string
  /** The numbers as they were typed, by socket id, of a form that is shown again. */
  readonly typed?: TypedPlaces
}

/** The dragged socket shown where it would be put down, its lettering along with it. */
function carried(arranged: ArrangedSocket, drag: Drag, layout: ChassisLayout): ArrangedSocket {
  const { place } = arranged
  const { x, y } = pointAt(layout.outline, drag.across, drag.depth)
  const label = { ...place.label, x: place.label.x + x - place.x, y: place.label.y + y - place.y }
  return { ...arranged, place: { ...place, x, y, label } }
}

type MovableSocketProps = {
  readonly movable: Movable
  readonly svg: () => SVGSVGElement | null
  readonly arranged: ArrangedSocket
}

function MovableSocket({ movable, svg, arranged }: MovableSocketProps) {
  const { socket, place } = arranged
  const where = `${Math.round(place.across)} across, ${Math.round(place.depth)} deep`
  const automatic = place.source === 'automatic' ? ', automatic' : ''
  return (
    <g
      role="button"
      tabIndex={0}
      className={`${styles.movable}${movable.drag?.moved && movable.drag.id !== socket.id ? ` ${styles.stepBack}` : ''}`}
      aria-label={`${spokenSocket(socket, movable.all)}. Stands ${where}${automatic}. Arrow keys move it.`}
      transform={`translate(${place.x.toFixed(1)} ${place.y.toFixed(1)})`}
      onKeyDown={keyHandler(movable, arranged)}
      {...dragHandlers(movable, svg, arranged)}
    >
      <SocketMark {...arranged} />
    </g>
  )
}

function EditorButtons({ movable }: { movable: Movable }) {
  const { state, change, setSaid } = movable
  const anyGiven = Object.values(state.now).some(({ across, depth }) => across !== '' || depth !== '')
  return (
    <div className={styles.editorButtons}>
      <button
        type="button"
        disabled={state.before.length === 0}
        onClick={() => {
          change({ do: 'undo' })
          setSaid('The last move is undone')
        }}
      >
        Undo the last move
      </button>
      <button
        type="button"
        disabled={!anyGiven}
        onClick={() => {
          change({ do: 'all-automatic' })
          setSaid('All sockets are in their automatic places')
        }}
      >
        Put back in automatic places
      </button>
    </div>
  )
}

export function ChassisEditor(props: ChassisEditorProps) {
  const { title, titleLines = [], sockets, words, fieldPrefix = 'sockets', typed } = props
  const movable = useMovableSockets({ sockets, words, typed })
  // A refusal must not stand folded away.
  const [unfolded] = useState(() => Object.values(typed ?? {}).some(isWrongPlace))
  const svgRef = useRef<SVGSVGElement>(null)
  const { all, drag, settled, said, state, change } = movable
  const { layout, sockets: arranged } = drag?.held ?? settled
  const shown = arranged.map((one) => (drag?.moved && one.socket.id === drag.id ? carried(one, drag, layout) : one))
  return (
    <div className={styles.figure}>
      <p className={styles.editorHint}>Drag a socket, or focus it and use the arrow keys (with shift: five steps).</p>
      <div className={styles.scroller}>
        <ChassisSheet
          title={title}
          titleLines={titleLines}
          layout={layout}
          sockets={sockets}
          words={all}
          svgRef={svgRef}
        >
          {drag?.moved && <ScaleGrid layout={layout} />}
          {drag?.moved && <CrossHair layout={layout} at={drag} />}
          {shown.map((one) => (
            <MovableSocket key={one.socket.id} movable={movable} svg={() => svgRef.current} arranged={one} />
          ))}
        </ChassisSheet>
      </div>
      <p role="status" className={styles.editorStatus}>
        {said}
      </p>
      <EditorButtons movable={movable} />
      <details className={styles.places} open={unfolded || undefined}>
        <summary>Places as numbers</summary>
        <PlaceFields
          fieldPrefix={fieldPrefix}
          sockets={sockets}
          places={state.now}
          onType={(id, field, text) => change({ do: 'type', id, field, text })}
        />
      </details>
    </div>
  )
}
