import Link from 'next/link'
import styles from './stock.module.css'

type Props = { readonly page: number; readonly pages: number; readonly query: Readonly<Record<string, string>> }

export function StockPages({ page, pages, query }: Props) {
  if (pages === 1) return null
  const at = (number: number) => `/stock?${new URLSearchParams({ ...query, page: String(number) })}`
  return (
    <nav aria-label="Pages of the stock" className={styles.pages}>
      {page > 1 && <Link href={at(page - 1)}>Earlier</Link>}
      <span>
        Page {page} of {pages}
      </span>
      {page < pages && <Link href={at(page + 1)}>Further</Link>}
    </nav>
  )
}
