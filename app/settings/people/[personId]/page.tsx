import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { HistoryList } from '@/app/_components/history-list'
import { mayDo } from '@/lib/domain/person/role'
import { requireUser } from '@/lib/session'
import { listHistoryOf } from '@/lib/store/history'
import { findPerson } from '@/lib/store/person'
import { KeeperOnly, SettingsFrame } from '../../settings-frame'
import { GivenPassPhraseForm, PersonForm } from '../person-forms'
import { personValues } from '../person-schema'

export const metadata: Metadata = { title: 'Person' }

export default async function PersonPage({ params }: PageProps<'/settings/people/[personId]'>) {
  const { actor, shop } = await requireUser()
  const { personId } = await params
  const person = await findPerson(personId)
  if (!person) notFound()
  const keeper = mayDo(actor, 'keep-shop')
  const history = await listHistoryOf('person', personId)
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/people">
      <h1>{person.name}</h1>
      {keeper ? (
        <div className="columns">
          <div className="stack">
            <section className="panel">
              <h2>Signs in as {person.signInName}</h2>
              <PersonForm values={personValues(person)} />
            </section>
            <section className="panel">
              <h2>Forgotten pass phrase</h2>
              <GivenPassPhraseForm personId={person.id} />
            </section>
          </div>
          <HistoryList history={history} shop={shop} />
        </div>
      ) : (
        <KeeperOnly />
      )}
    </SettingsFrame>
  )
}
