/** Pages that belong together, like the tabs of a folder. */
import Link from 'next/link'
import styles from './section-tabs.module.css'

type Props<Href extends string> = {
  readonly label: string
  readonly tabs: readonly (readonly [href: Href, text: string])[]
  readonly open: Href
}

export function SectionTabs<Href extends string>({ label, tabs, open }: Props<Href>) {
  return (
    <nav aria-label={label} className={`${styles.tabs} no-print`}>
      {tabs.map(([href, text]) => (
        <Link key={href} href={href} aria-current={href === open ? 'page' : undefined}>
          {text}
        </Link>
      ))}
    </nav>
  )
}
