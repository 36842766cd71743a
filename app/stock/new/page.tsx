import type { Metadata } from 'next'
import { onceMark } from '@/app/_components/form/once'
import { Shell } from '@/app/_components/shell/shell'
import { dayInZone } from '@/lib/domain/calendar'
import { mayDo } from '@/lib/domain/person/role'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listTubeTesters } from '@/lib/store/tube-tester'
import { blankTest } from '../test-schema'
import { SHARED_BLANK, stockKit } from '../tube-schema'
import { TypeLists } from '../type-lists'
import { NewTubeForm } from './new-tube-form'

export const metadata: Metadata = { title: 'Take one in' }

export default async function NewTubePage() {
  const { actor, shop } = await requireUser()
  const testers = await listTubeTesters()
  const today = dayInZone(new Date(), shop.timeZone)
  const values = { mark: '', ...SHARED_BLANK, ...blankTest({ today, instrument: testers[0] ?? '' }), once: onceMark() }
  return (
    <Shell shop={shop} actor={actor}>
      <h1>Take in one {wordsFor(shop.words).tube}</h1>
      <TypeLists testers={testers} catalogue={shop} />
      <NewTubeForm kit={stockKit(shop)} values={values} withTest={mayDo(actor, 'bench-work')} />
    </Shell>
  )
}
