/** What is looked for is part of the address, so that it can be gone back to. */
import type { StockView } from '@/lib/store/tube'
import styles from './stock.module.css'

const VIEW_WORDS: readonly (readonly [StockView, string])[] = [
  ['in-stock', 'In stock'],
  ['free', 'In stock and free'],
  ['held', 'Held or reserved'],
  ['untested', 'In stock, untested'],
  ['fitted', 'Fitted'],
  ['out', 'Sold or scrapped'],
  ['all', 'Everything'],
]

export const viewOf = (text: unknown): StockView => VIEW_WORDS.find(([view]) => view === text)?.[0] ?? 'in-stock'

export function StockSearch({ search, view }: { search: string; view: StockView }) {
  return (
    <search className="no-print">
      <form action="/stock" className={`row ${styles.search}`}>
        <div className="field">
          <label htmlFor="q">Mark, type, family, condition or location</label>
          <input id="q" name="q" type="search" defaultValue={search} />
        </div>
        <div className="field">
          <label htmlFor="view">Show</label>
          <select id="view" name="view" defaultValue={view}>
            {VIEW_WORDS.map(([value, text]) => (
              <option key={value} value={value}>
                {text}
              </option>
            ))}
          </select>
        </div>
        <button type="submit" className="button quiet">
          Look up
        </button>
      </form>
    </search>
  )
}
