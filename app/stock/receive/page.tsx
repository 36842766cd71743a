import type { Metadata } from 'next'
import { onceMark } from '@/app/_components/form/once'
import { Shell } from '@/app/_components/shell/shell'
import { dayInZone } from '@/lib/domain/calendar'
import { mayDo } from '@/lib/domain/person/role'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listSetNames } from '@/lib/store/tube-set'
import { listTubeTesters } from '@/lib/store/tube-tester'
import { stockKit } from '../tube-schema'
import { TypeLists } from '../type-lists'
import { ReceiveForm } from './receive-form'
import { receiveValues } from './receive-schema'

export const metadata: Metadata = { title: 'Take in several' }

export default async function ReceivePage() {
  const { actor, shop } = await requireUser()
  const [testers, sets] = await Promise.all([listTubeTesters(), listSetNames()])
  const today = dayInZone(new Date(), shop.timeZone)
  return (
    <Shell shop={shop} actor={actor}>
      <h1>Take in several {wordsFor(shop.words).tubes} of one type</h1>
      {!mayDo(actor, 'bench-work') && (
        <p className="caution">Readings are entered by a technician. Take them in untested, or ask one to sign in.</p>
      )}
      <TypeLists testers={testers} catalogue={shop} sets={sets} />
      <ReceiveForm
        kit={stockKit(shop)}
        values={{ ...receiveValues({ today, instrument: testers[0] ?? '' }), once: onceMark() }}
      />
    </Shell>
  )
}
