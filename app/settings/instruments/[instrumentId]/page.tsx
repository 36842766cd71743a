import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { HistoryList } from '@/app/_components/history-list'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listHistoryOf } from '@/lib/store/history'
import { findInstrument } from '@/lib/store/instrument'
import { mayKeepInstruments } from '@/lib/workflow/shop/keep-instrument'
import { SettingsFrame } from '../../settings-frame'
import { InstrumentForm } from '../instrument-form'
import { instrumentValues } from '../instrument-schema'
import { NotYourInstruments } from '../not-your-instruments'

export const metadata: Metadata = { title: 'Instrument' }

export default async function InstrumentPage({ params }: PageProps<'/settings/instruments/[instrumentId]'>) {
  const { actor, shop } = await requireUser()
  const { instrumentId } = await params
  const instrument = await findInstrument(instrumentId)
  if (!instrument) notFound()
  const history = await listHistoryOf('instrument', instrumentId)
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/instruments">
      <h1>{instrument.name}</h1>
      <div className="columns">
        {mayKeepInstruments({ actor }) ? (
          <div className="panel">
            <InstrumentForm values={instrumentValues(instrument)} tube={wordsFor(shop.words).tube} />
          </div>
        ) : (
          <NotYourInstruments />
        )}
        <HistoryList history={history} shop={shop} />
      </div>
    </SettingsFrame>
  )
}
