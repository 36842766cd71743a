import type { Metadata } from 'next'
import Link from 'next/link'
import { redirect } from 'next/navigation'
import { quoteStateWord, quoteTitle, stateNow } from '@/lib/domain/quote/quote'
import { requireUser } from '@/lib/session'
import { requireHead } from '../../require-head'
import { readLimits } from '../limits-form'
import { readExchangeAsked } from './exchange-address'
import { ExchangeAsk } from './exchange-ask'
import { LookedAt } from './looked-at'
import { OffersTable } from './offers-table'
import { comparedSets } from './reckoning/compared-sets'
import { exchangeAgainst } from './reckoning/exchange-against'
import { exchangeView } from './reckoning/exchange-view'
import { lookedAt } from './reckoning/looked'
import { offersOf } from './reckoning/offers'

export const metadata: Metadata = { title: 'Exchange' }

export default async function ExchangePage({ params, searchParams }: PageProps<'/jobs/[jobNumber]/tubes/exchange'>) {
  const { actor, shop } = await requireUser()
  const { job } = await requireHead(params)
  const query = await searchParams
  const asked = readExchangeAsked(query)
  const limits = readLimits(query, shop)
  const back = `/jobs/${job.number}/${asked.work ? 'work' : 'tubes'}`
  if (asked.position === '') redirect(back)
  const found = await exchangeView({ job, shop, asked, limits })
  const ask = <ExchangeAsk jobNumber={job.number} asked={asked} limits={limits} shop={shop} />
  if (!found.ok)
    return (
      <>
        <Head position={asked.position} back={back} />
        <p className="form-message" data-status="refused" role="alert">
          {found.fault}
        </p>
        {ask}
      </>
    )
  const view = found.value
  const { out, quote, into } = view
  const compared = await comparedSets(view)
  const state = stateNow(quote, view.view.now, shop.timeZone)
  const against = exchangeAgainst(view, actor)
  return (
    <>
      <Head position={asked.position} back={back} />
      <p>
        {asked.position} is to have <Link href={`/stock/${out.tube.id}`}>{out.tube.mark}</Link> {out.tube.designation}{' '}
        by quote {quoteTitle(quote)}, {quoteStateWord(state)}.
      </p>
      {compared.notPredicted !== '' && <p className="soft">Compared at the test point: {compared.notPredicted}</p>}
      {against !== null && (
        <p className="form-message" data-status="refused">
          {against}
        </p>
      )}
      {into && against === null && (
        <LookedAt view={view} looked={lookedAt(view, into, compared)} compared={compared} limits={limits} />
      )}
      {against === null && (
        <OffersTable view={view} offers={await offersOf(view, compared)} compared={compared} limits={limits} />
      )}
      {against === null && ask}
    </>
  )
}

function Head({ position, back }: { readonly position: string; readonly back: string }) {
  return (
    <div className="row spread">
      <h2>Exchange in {position}</h2>
      <Link href={back}>Leave it as it is</Link>
    </div>
  )
}
