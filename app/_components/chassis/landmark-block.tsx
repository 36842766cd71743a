/** Transformers, choke and filter can: orientation only, not what the amplifier really carries. */
import type { Landmark, Rect } from '@/lib/domain/amp/chassis-layout'
import styles from './chassis.module.css'
import type { AllChassisWords } from './chassis-view'
import { brokenLines } from './lettering'

/** Diagonal strokes cut off at the edges of the rectangle, rising or falling to the right. */
function hatching({ x, y, width, height }: Rect, pitch: number, rising: boolean): string {
  const strokes: string[] = []
  for (let at = pitch; at < width + height; at += pitch) {
    const x1 = Math.max(0, at - height)
    const y1 = Math.min(at, height)
    const x2 = Math.min(at, width)
    const y2 = Math.max(0, at - width)
    const flip = (offset: number) => (rising ? offset : width - offset)
    strokes.push(`M ${x + flip(x1)} ${y + y1} L ${x + flip(x2)} ${y + y2}`)
  }
  return strokes.join(' ')
}

const inset = ({ x, y, width, height }: Rect, by: number): Rect => ({
  x: x + by,
  y: y + by,
  width: width - 2 * by,
  height: height - 2 * by,
})

function Plate({ rect, text }: { rect: Rect; text: string }) {
  const lines = brokenLines(text, 16, rect.width - 26)
  const height = lines.length * 19 + 10
  const top = rect.y + (rect.height - height) / 2
  return (
    <>
      <rect className={styles.plate} x={rect.x + 8} y={top} width={rect.width - 16} height={height} />
      {lines.map((line, index) => (
        <text
          key={line.text}
          className={styles.landmarkWord}
          x={rect.x + rect.width / 2}
          y={top + 20 + index * 19}
          textLength={line.squeezed ? rect.width - 24 : undefined}
          lengthAdjust="spacingAndGlyphs"
        >
          {line.text}
        </text>
      ))}
    </>
  )
}

function Iron({ landmark, text }: { landmark: Landmark; text: string }) {
  const core = inset(landmark, landmark.kind === 'choke' ? 4 : 8)
  const corners = [
    [landmark.x + 8, landmark.y + 8],
    [landmark.x + landmark.width - 8, landmark.y + 8],
    [landmark.x + 8, landmark.y + landmark.height - 8],
    [landmark.x + landmark.width - 8, landmark.y + landmark.height - 8],
  ] as const
  return (
    <>
      <rect className={styles.iron} {...rectOf(landmark)} rx={5} />
      <path
        className={styles.hatch}
        d={hatching(core, landmark.kind === 'mains-transformer' ? 9 : 12, landmark.kind !== 'output-transformer')}
      />
      <rect className={styles.core} {...rectOf(core)} />
      {landmark.kind !== 'choke' &&
        corners.map(([x, y]) => <circle key={`${x} ${y}`} className={styles.bolt} cx={x} cy={y} r={4} />)}
      <Plate rect={landmark} text={text} />
    </>
  )
}

const rectOf = ({ x, y, width, height }: Rect): Rect => ({ x, y, width, height })

function Can({ landmark, text }: { landmark: Landmark; text: string }) {
  const x = landmark.x + landmark.width / 2
  const y = landmark.y + 30
  return (
    <>
      <circle className={styles.iron} cx={x} cy={y} r={28} />
      <circle className={styles.core} cx={x} cy={y} r={22} />
      <path className={styles.core} d={`M ${x - 6} ${y} H ${x + 6} M ${x} ${y - 6} V ${y + 6}`} />
      {brokenLines(text, 16, landmark.width).map((line, index) => (
        <text
          key={line.text}
          className={styles.landmarkWord}
          x={x}
          y={y + 46 + index * 17}
          textLength={line.squeezed ? landmark.width : undefined}
          lengthAdjust="spacingAndGlyphs"
        >
          {line.text}
        </text>
      ))}
    </>
  )
}

function wordFor({ kind }: Landmark, words: AllChassisWords): string {
  switch (kind) {
    case 'mains-transformer':
      return words.mainsTransformer
    case 'output-transformer':
      return words.outputTransformer
    case 'choke':
      return words.choke
    case 'capacitor-can':
      return words.capacitorCan
  }
}

export function LandmarkBlock({ landmark, words }: { landmark: Landmark; words: AllChassisWords }) {
  const text = wordFor(landmark, words)
  return landmark.kind === 'capacitor-can' ? (
    <Can landmark={landmark} text={text} />
  ) : (
    <Iron landmark={landmark} text={text} />
  )
}
