import type { Metadata } from 'next'
import { Shell } from '@/app/_components/shell/shell'
import { conditionWord, TUBE_CONDITIONS } from '@/lib/domain/stock/tube'
import { capital } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { PricePanel } from '../price-panel'
import { StockSections } from '../stock-sections'
import { TypeLists } from '../type-lists'

export const metadata: Metadata = { title: 'Prices' }

/** What to ask for a tube that is not in the book yet. */
export default async function PricesPage({ searchParams }: PageProps<'/stock/prices'>) {
  const { actor, shop } = await requireUser()
  const query = await searchParams
  const designation = typeof query.type === 'string' ? query.type.trim().slice(0, 40) : ''
  const condition = TUBE_CONDITIONS.find((each) => each === query.condition) ?? 'used-tested'
  return (
    <Shell shop={shop} actor={actor}>
      <StockSections words={shop.words} section="/stock" />
      <h1>What to ask</h1>
      <TypeLists testers={[]} catalogue={shop} />
      <form action="/stock/prices" className="panel stack">
        <div className="fields">
          <div className="field">
            <label htmlFor="type">Type</label>
            <input id="type" name="type" list="tube-types" defaultValue={designation} />
          </div>
          <div className="field">
            <label htmlFor="condition">Condition</label>
            <select id="condition" name="condition" defaultValue={condition}>
              {TUBE_CONDITIONS.map((each) => (
                <option key={each} value={each}>
                  {capital(conditionWord(each))}
                </option>
              ))}
            </select>
          </div>
        </div>
        <div className="row">
          <button type="submit" className="button quiet">
            Look up
          </button>
        </div>
      </form>
      {designation && <PricePanel wanted={{ designation, condition, test: null, tubeId: null }} shop={shop} />}
    </Shell>
  )
}
