import type { Metadata } from 'next'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { mayKeepInstruments } from '@/lib/workflow/shop/keep-instrument'
import { SettingsFrame } from '../../settings-frame'
import { InstrumentForm } from '../instrument-form'
import { instrumentValues } from '../instrument-schema'
import { NotYourInstruments } from '../not-your-instruments'

export const metadata: Metadata = { title: 'New instrument' }

export default async function NewInstrumentPage() {
  const { actor, shop } = await requireUser()
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/instruments">
      <h1>New instrument</h1>
      {mayKeepInstruments({ actor }) ? (
        <div className="panel">
          <InstrumentForm values={instrumentValues(null)} tube={wordsFor(shop.words).tube} />
        </div>
      ) : (
        <NotYourInstruments />
      )}
    </SettingsFrame>
  )
}
