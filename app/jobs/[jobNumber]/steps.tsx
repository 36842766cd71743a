'use client'
/** The eight steps of a job, like the index tabs of a card, each with where it stands in words. */
import Link from 'next/link'
import { usePathname } from 'next/navigation'
import styles from './steps.module.css'

export type StepTab = { readonly path: string; readonly text: string; readonly stands: string; readonly done: boolean }

export function Steps({ base, tabs }: { base: string; tabs: readonly StepTab[] }) {
  const here = usePathname()
  return (
    <nav aria-label="Steps of this job" className={styles.steps}>
      <ol>
        {tabs.map(({ path, text, stands, done }, index) => {
          const href = path.startsWith('/') ? path : path === '' ? base : `${base}/${path}`
          return (
            <li key={text}>
              <Link href={href} aria-current={here === href ? 'step' : undefined} data-done={done ? '' : undefined}>
                <span className={styles.number}>{done ? '✓' : index + 1}</span>
                <span className={styles.text}>{text}</span>
                <span className={styles.stands}>{stands}</span>
              </Link>
            </li>
          )
        })}
      </ol>
    </nav>
  )
}
