/** The frame of every signed-in page: shop, the day's places, who is signed in. */
import Link from 'next/link'
import type { Actor } from '@/lib/domain/person/role'
import type { Shop } from '@/lib/domain/shop/shop'
import { capital, wordsFor } from '@/lib/domain/words'
import { leave } from './leave'
import styles from './shell.module.css'

export function Shell({ shop, actor, children }: { shop: Shop; actor: Actor; children: React.ReactNode }) {
  const words = wordsFor(shop.words)
  const places = [
    ['/', 'The day'],
    ['/jobs/new', 'New job'],
    ['/customers', 'Customers'],
    ['/amps', 'Amplifiers'],
    ['/stock', `${capital(words.tube)} stock`],
    ['/types', `${capital(words.tube)} data`],
    ['/outbox', 'Outbox'],
    ['/settings', 'Settings'],
  ] as const
  return (
    <>
      <a className={styles.skip} href="#content">
        Skip to the page
      </a>
      <header className={styles.head}>
        <Link href="/" className={styles.shop}>
          {shop.name}
          {shop.demo && <span className={styles.demo}>demo shop, invented data</span>}
        </Link>
        <nav aria-label="Places" className={styles.places}>
          {places.map(([href, text]) => (
            <Link key={href} href={href}>
              {text}
            </Link>
          ))}
        </nav>
        <form action="/find" className={styles.find}>
          <label className="sr-only" htmlFor="find">
            Find a job number, customer, serial or mark
          </label>
          <input id="find" name="q" type="search" placeholder="Job, name, serial, mark" />
        </form>
        <form action={leave} className={styles.who}>
          <span>
            {actor.name} <span className="soft">· {actor.role}</span>
          </span>
          <button type="submit">Sign out</button>
        </form>
      </header>
      <main id="content" className="page">
        {children}
      </main>
    </>
  )
}
