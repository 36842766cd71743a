/**
 * Bulbs from the side, all to one scale: a unit is a millimetre, so that sizes compare. Diameters follow the
 * outline number (eighths of an inch); heights are from memory.
 */
import { Drawing } from './drawing'
import styles from './tube-drawings.module.css'

type Shape = 'metal' | 'tubular' | 'shouldered' | 'broad' | 'globe'
type Outline = {
  readonly shape: Shape
  readonly width: number
  readonly height: number
  /** 0: the pins come out of the glass. */
  readonly base: number
}

const OUTLINES: Readonly<Record<string, Outline>> = {
  metal: { shape: 'metal', width: 31, height: 60, base: 33 },
  'T-5½': { shape: 'tubular', width: 18, height: 46, base: 0 },
  'T-6½': { shape: 'tubular', width: 21, height: 50, base: 0 },
  'T-9': { shape: 'tubular', width: 29, height: 58, base: 30 },
  'T-12': { shape: 'tubular', width: 38, height: 84, base: 35 },
  'ST-12': { shape: 'shouldered', width: 38, height: 82, base: 33 },
  'ST-14': { shape: 'shouldered', width: 44, height: 92, base: 35 },
  'ST-16': { shape: 'shouldered', width: 51, height: 106, base: 38 },
  'ST-19': { shape: 'shouldered', width: 60, height: 114, base: 42 },
  broad: { shape: 'broad', width: 52, height: 98, base: 38 },
  globe: { shape: 'globe', width: 56, height: 100, base: 38 },
}

const MIDDLE = 36
const FOOT = 132
const BASE_HEIGHT = 14

const tubular = (left: number, right: number, top: number, foot: number): string => {
  const radius = (right - left) / 2
  return `M ${left} ${foot} V ${top + radius} A ${radius} ${radius} 0 0 1 ${right} ${top + radius} V ${foot}`
}

/** Neck, round shoulder, then the narrower dome that holds the upper mica. */
function shouldered({ width }: Outline, top: number, foot: number): string {
  const [half, neck, dome] = [width / 2, width * 0.31, width * 0.3]
  const rise = foot - top
  const [widest, waist] = [foot - rise * 0.48, top + rise * 0.26]
  return [
    `M ${MIDDLE - neck} ${foot}`,
    `C ${MIDDLE - neck} ${foot - rise * 0.2} ${MIDDLE - half} ${foot - rise * 0.25} ${MIDDLE - half} ${widest}`,
    `C ${MIDDLE - half} ${widest - rise * 0.14} ${MIDDLE - dome} ${waist + rise * 0.08} ${MIDDLE - dome} ${waist}`,
    `V ${top + dome} A ${dome} ${dome} 0 0 1 ${MIDDLE + dome} ${top + dome} V ${waist}`,
    `C ${MIDDLE + dome} ${waist + rise * 0.08} ${MIDDLE + half} ${widest - rise * 0.14} ${MIDDLE + half} ${widest}`,
    `C ${MIDDLE + half} ${foot - rise * 0.25} ${MIDDLE + neck} ${foot - rise * 0.2} ${MIDDLE + neck} ${foot}`,
  ].join(' ')
}

function broad({ width }: Outline, top: number, foot: number): string {
  const [half, neck] = [width / 2, width * 0.36]
  return `M ${MIDDLE - neck} ${foot} C ${MIDDLE - half * 1.12} ${foot - 34} ${MIDDLE - half * 1.12} ${top + 40} ${MIDDLE - half * 0.86} ${top + 24} A ${half * 0.86} 24 0 0 1 ${MIDDLE + half * 0.86} ${top + 24} C ${MIDDLE + half * 1.12} ${top + 40} ${MIDDLE + half * 1.12} ${foot - 34} ${MIDDLE + neck} ${foot}`
}

function globe({ width }: Outline, top: number, foot: number): string {
  const [half, neck] = [width / 2, width * 0.3]
  return `M ${MIDDLE - neck} ${foot} C ${MIDDLE - neck} ${foot - 24} ${MIDDLE - half} ${foot - 28} ${MIDDLE - half} ${top + half} A ${half} ${half} 0 0 1 ${MIDDLE + half} ${top + half} C ${MIDDLE + half} ${foot - 28} ${MIDDLE + neck} ${foot - 24} ${MIDDLE + neck} ${foot}`
}

/** Can with its crimped rim, and the insulated foot below. */
function metal({ width }: Outline, top: number, foot: number): string {
  const [left, right, rim] = [MIDDLE - width / 2, MIDDLE + width / 2, width / 2 + 4]
  return `M ${left} ${foot - 8} V ${top + 8} Q ${left} ${top} ${left + 8} ${top} H ${right - 8} Q ${right} ${top} ${right} ${top + 8} V ${foot - 8} M ${MIDDLE - rim} ${foot - 8} H ${MIDDLE + rim} V ${foot} H ${MIDDLE - rim} Z`
}

function glassPath(outline: Outline, top: number, foot: number): string {
  const { shape, width } = outline
  if (shape === 'shouldered') return shouldered(outline, top, foot)
  if (shape === 'broad') return broad(outline, top, foot)
  if (shape === 'globe') return globe(outline, top, foot)
  if (shape === 'metal') return metal(outline, top, foot)
  return tubular(MIDDLE - width / 2, MIDDLE + width / 2, top, foot)
}

function Foot({ outline: { base, width } }: { outline: Outline }) {
  const pins = base === 0 ? [-0.32, -0.1, 0.12, 0.34] : [-0.3, -0.1, 0.1, 0.3]
  const top = FOOT
  const span = base === 0 ? width : base
  return (
    <>
      {base > 0 && <rect x={MIDDLE - base / 2} y={FOOT - BASE_HEIGHT} width={base} height={BASE_HEIGHT} rx={1.5} />}
      {base === 0 && <path d={`M ${MIDDLE - width / 2} ${FOOT} H ${MIDDLE + width / 2}`} />}
      {pins.map((at) => (
        <path key={at} d={`M ${MIDDLE + at * span} ${top} v 9`} />
      ))}
    </>
  )
}

export function BulbDrawing({ choice, title }: { choice: string; title?: string }) {
  const outline = OUTLINES[choice]
  if (!outline) return null
  const foot = outline.base > 0 ? FOOT - BASE_HEIGHT : FOOT
  return (
    <Drawing viewBox="0 0 72 144" title={title}>
      {outline.shape === 'metal' && (
        <rect
          className={styles.shade}
          x={MIDDLE - outline.width / 2}
          y={foot - outline.height}
          width={outline.width}
          height={outline.height - 8}
        />
      )}
      <path d={glassPath(outline, foot - outline.height, foot)} />
      <Foot outline={outline} />
    </Drawing>
  )
}
