/** The best few of the stock for one socket, each with what the set would be. */
import 'server-only'
import type { Candidate } from '@/lib/domain/matching/candidate'
import { pointAt } from '@/lib/domain/matching/line-up'
import { naturalOrder } from '@/lib/domain/matching/natural-order'
import type { PredictedTube } from '@/lib/domain/matching/predicted-tube'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { money } from '@/lib/domain/money'
import { balancedTwins } from '@/lib/domain/stock/balanced-twins'
import { candidateOf, type JudgedTube } from '@/lib/domain/stock/candidate-of'
import { unfitFor } from '@/lib/domain/stock/unfit-for'
import { listBriefStock } from '@/lib/store/brief-stock'
import type { Compared, Sets } from './compared-sets'
import type { ExchangeView } from './exchange-view'
import { priceWith } from './looked'

export type Offer = {
  readonly tube: Candidate
  /** null: it is compared by its reading, or by nothing. */
  readonly predicted: PredictedTube | null
  /** null: it stands alone. */
  readonly option: SetOption | null
}

export type Offers = {
  readonly best: readonly Offer[]
  /** That would do, but cost more than was agreed. */
  readonly dearer: number
}

const SHOWN = 5

/** Least loss first; a phase inverter asks for balanced sections instead of a set, any other socket alone for no figures at all. */
export async function offersOf(asked: ExchangeView, { sets }: Compared): Promise<Offers> {
  if (sets === null) return offersAlone(asked)
  return sets.ok ? offersInSet(asked, sets.value) : { best: [], dearer: 0 }
}

function offersInSet(asked: ExchangeView, { running, places, first, setWith }: Sets): Offers {
  const { tubeIds, marks, price, kinds, kindOf } = running.stock
  const named = namedOn(asked)
  const isFree = (place: number) => !named.has(tubeIds[place] as string)
  const isWithin = (place: number) => {
    const { designation } = kinds[kindOf[place] as number] as Candidate
    return priceWith(asked, { designation, mark: marks[place] as string, price: money(price[place] as number) }).ok
  }
  const best = first(SHOWN, (place) => isFree(place) && isWithin(place)).map((place): Offer => {
    const { tube, predicted } = pointAt(running, place)
    return { tube, predicted, option: setWith(place) }
  })
  return { best, dearer: places.filter((place) => isFree(place) && !isWithin(place)).length }
}

/** Nothing of it is kept: a kept stock knows of first sections alone, and of no rectifier's test. */
async function offersAlone(asked: ExchangeView): Promise<Offers> {
  const stock = await listBriefStock(asked.place.demand.family)
  const named = namedOn(asked)
  const ranked = rankedAlone(
    asked,
    stock.filter(({ tube }) => !named.has(tube.id)),
  )
  const within = ranked.filter((tube) => priceWith(asked, tube).ok)
  return {
    best: within.slice(0, SHOWN).map((tube) => ({ tube, predicted: null, option: null })),
    dearer: ranked.length - within.length,
  }
}

function rankedAlone({ place, view, format, limits }: ExchangeView, stock: readonly JudgedTube[]): Candidate[] {
  if (place.socket.role === 'phase-inverter')
    return balancedTwins(stock, place.demand, { ...view, limits }).map(({ candidate }) => candidate)
  const fit = stock.filter((each) => unfitFor(each, place, { ...view, limits, format }).length === 0)
  return fit.map((each) => candidateOf(each, view)).sort((a, b) => a.price - b.price || naturalOrder(a.mark, b.mark))
}

const namedOn = ({ quote }: ExchangeView): ReadonlySet<string> =>
  new Set(quote.lines.flatMap(({ tubeId }) => tubeId ?? []))
