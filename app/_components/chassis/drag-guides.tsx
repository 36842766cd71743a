/** Shown while a socket is carried: the scale in tenths, and the cross where it would be put down. */
import { pointAt } from '@/lib/domain/amp/chassis-frame'
import type { ChassisLayout } from '@/lib/domain/amp/chassis-layout'
import styles from './chassis.module.css'

export function ScaleGrid({ layout }: { layout: ChassisLayout }) {
  const steps = Array.from({ length: 11 }, (_, index) => index * 10)
  const rear = pointAt(layout.outline, 100, 100)
  const front = pointAt(layout.outline, 0, 0)
  const lines = steps.flatMap((step) => {
    const { x, y } = pointAt(layout.outline, step, step)
    return [`M ${x} ${rear.y} V ${front.y}`, `M ${front.x} ${y} H ${rear.x}`]
  })
  return <path className={styles.snapGrid} d={lines.join(' ')} />
}

export function CrossHair({
  layout,
  at,
}: {
  layout: ChassisLayout
  at: { readonly across: number; readonly depth: number }
}) {
  const { x, y } = pointAt(layout.outline, at.across, at.depth)
  const { outline } = layout
  return (
    <path
      className={styles.crossHair}
      d={`M ${x} ${outline.y} v ${outline.height} M ${outline.x} ${y} h ${outline.width}`}
    />
  )
}
