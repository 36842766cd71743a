/**
 * Frame of a small line drawing. With a title it is a picture that is read aloud; without one it stands beside
 * words that say the same and is passed over.
 */
import type { ReactNode } from 'react'
import styles from './tube-drawings.module.css'

type Frame = { readonly viewBox: string; readonly title?: string; readonly children: ReactNode }

export function Drawing({ viewBox, title, children }: Frame) {
  if (title === undefined)
    return (
      <svg className={styles.drawing} viewBox={viewBox} aria-hidden="true">
        {children}
      </svg>
    )
  return (
    <svg className={styles.drawing} viewBox={viewBox} role="img" aria-label={title}>
      {children}
    </svg>
  )
}
