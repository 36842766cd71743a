/** Below a line that draws a part of the drawers: which one, and whether there is enough of it for the whole quote. */
import { type RowValues, rowsOf } from '@/app/_components/form/edit-rows'
import type { FormValues } from '@/app/_components/form/form-state'
import { readFixed } from '@/lib/domain/decimal'
import { piecesByPart, shortText } from '@/lib/domain/stock/drawer'
import styles from './quote.module.css'

/** A part as the draft can choose it; plain values, so that they reach the browser. */
export type PartChoice = {
  readonly id: string
  readonly name: string
  /** With price and how many are free. */
  readonly option: string
  readonly location: string
  /** Drawn by this job, set aside for it, or free. */
  readonly there: number
}

export function DrawnNote({ part, values }: { part: PartChoice | undefined; values: FormValues }) {
  if (!part) return null
  const needed = piecesByPart(rowsOf(values, 'parts').map(drawn)).get(part.id) ?? 0
  const short = shortText(needed, part.there)
  return (
    <p className={short ? `${styles.drawn} ${styles.short}` : styles.drawn}>
      From the drawers: {part.name}
      {part.location && `, ${part.location}`}. {short ? <strong>{short}.</strong> : `${part.there} free for this job.`}
    </p>
  )
}

/** A quantity that cannot be read yet asks for nothing; the box itself says so. */
function drawn({ partId = '', thousandths = '' }: RowValues) {
  const read = readFixed(thousandths, 3)
  return { partId: partId || null, thousandths: read.ok ? Math.max(read.value, 0) : 0 }
}
