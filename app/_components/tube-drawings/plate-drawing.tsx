/** Plates as they stand in the bulb, seen from the side. */
import { Drawing } from './drawing'

type Box = readonly [x: number, y: number, width: number, height: number]

const PLATES: Readonly<Record<string, readonly Box[]>> = {
  one: [[26, 20, 20, 36]],
  alike: [
    [16, 20, 17, 36],
    [39, 20, 17, 36],
  ],
  unlike: [
    [12, 30, 12, 20],
    [34, 16, 24, 40],
  ],
}

export function PlateDrawing({ choice, title }: { choice: string; title?: string }) {
  const plates = PLATES[choice]
  if (!plates) return null
  return (
    <Drawing viewBox="0 0 72 72" title={title}>
      <path d="M 8 14 H 64 M 8 60 H 64" />
      {plates.map(([x, y, width, height]) => (
        <rect key={x} {...{ x, y, width, height }} rx={3} />
      ))}
      {plates.map(([x, , width]) => (
        <path key={x} d={`M ${x + width / 2} 14 V 60`} strokeDasharray="2 3" />
      ))}
    </Drawing>
  )
}
