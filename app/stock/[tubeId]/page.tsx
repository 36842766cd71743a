import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { startKey } from '@/app/_components/form/after-save'
import { HistoryList } from '@/app/_components/history-list'
import { Shell } from '@/app/_components/shell/shell'
import { dayInZone, formatInstant } from '@/lib/domain/calendar'
import { mayDo } from '@/lib/domain/person/role'
import { instrumentCorrections } from '@/lib/domain/stock/instrument-correction'
import { isUsable } from '@/lib/domain/stock/latest-test'
import { stockType } from '@/lib/domain/stock/stock-type'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listHistoryOf } from '@/lib/store/history'
import { findImportOf } from '@/lib/store/import'
import { findTube, listFittingsOf, listReferenceTubes, listTests } from '@/lib/store/tube'
import { listPhotos } from '@/lib/store/tube-photo'
import { listSetMembers, listSetNames } from '@/lib/store/tube-set'
import { listTubeTesters } from '@/lib/store/tube-tester'
import { pricesOf } from '../look-up-prices'
import { stockKit, tubeValues } from '../tube-schema'
import { TypeLists } from '../type-lists'
import { AddTestForm } from './add-test-form'
import { MoveForm } from './move-form'
import { TestsTable } from './tests-table'
import { TubeFacts } from './tube-facts'
import { TubeForm } from './tube-form'
import { TubeLife } from './tube-life'
import { addTestValues } from './tube-page-schema'
import { TubePhotos } from './tube-photos'

export const metadata: Metadata = { title: 'Stock' }

export default async function TubePage({ params, searchParams }: PageProps<'/stock/[tubeId]'>) {
  const { actor, shop } = await requireUser()
  const tube = await findTube((await params).tubeId)
  if (!tube) notFound()
  const query = await searchParams
  const [formKey, tested] = [startKey(query), query.tested]
  const [tests, fittings, history, testers, photos, sets, members, references, cameBy] = await Promise.all([
    listTests(tube.id),
    listFittingsOf(tube.id),
    listHistoryOf('tube', tube.id),
    listTubeTesters(),
    listPhotos(tube.id),
    listSetNames(),
    listSetMembers(tube.further.setName),
    listReferenceTubes(),
    findImportOf(tube.id),
  ])
  const now = new Date()
  const kit = stockKit(shop)
  const type = stockType(tube.designation, shop)
  const electrodes = { screen: type.mayHaveScreen, grid: type.mayHaveGrid, second: type.mayHaveTwoSections }
  const start = { today: dayInZone(now, shop.timeZone), instrument: testers[0] ?? '' }
  const { designation, condition } = tube
  const wanted = { designation, condition, test: tests.find(isUsable) ?? null, tubeId: tube.id }
  const prices = await pricesOf(wanted, shop)
  const sitsInAmp = fittings.some(({ removedAt }) => removedAt === null)
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>
          {tube.mark} <span className="soft">{tube.designation}</span>
        </h1>
        <div className="row">
          <Link href={`/stock/labels?marks=${tube.mark}`}>Label</Link>
          <Link href={`/stock/${tube.id}/uses`}>Where it could go</Link>
        </div>
      </div>
      <TypeLists testers={testers} catalogue={shop} sets={sets} />
      <section className="panel">
        <h2>Tests</h2>
        <TestsTable tests={tests} shop={shop} now={now} corrections={instrumentCorrections(references)} />
      </section>
      <div className="columns">
        <div className="stack">
          {mayDo(actor, 'bench-work') && tube.whereabouts === 'in-stock' && (
            <section className="panel no-print">
              <h2>Add a test</h2>
              <AddTestForm
                key={`test ${tested}`}
                kit={kit}
                values={addTestValues(tube.id, start, tests.find(isUsable) ?? null)}
                electrodes={electrodes}
                rejected={tube.condition === 'reject'}
              />
            </section>
          )}
          <section className="panel no-print">
            <h2>Correct what is written</h2>
            {/* Keyed by the address and not by the version: without JavaScript a refusal finds its form again by the key. */}
            <TubeForm key={`sheet ${formKey}`} kit={kit} values={tubeValues(tube, kit)} prices={prices} />
          </section>
        </div>
        <div className="stack">
          <TubeFacts tube={tube} type={type} shop={shop} now={now} members={members} />
          <TubePhotos tubeId={tube.id} photos={photos} fault={typeof query.photo === 'string' ? query.photo : ''} />
          <TubeLife tube={tube} fittings={fittings} shop={shop} formKey={formKey} />
          <section className="panel no-print">
            <h2>{tube.whereabouts === 'in-stock' ? 'Take out of stock' : 'Put back into stock'}</h2>
            {tube.whereabouts === 'fitted' && sitsInAmp ? (
              <p className="soft">
                This {wordsFor(shop.words).tube} sits in an amplifier and leaves it with that amplifier's job.
              </p>
            ) : (
              <MoveForm
                key={`move ${formKey}`}
                tubeId={tube.id}
                version={tube.version}
                inStock={tube.whereabouts === 'in-stock'}
              />
            )}
          </section>
          <HistoryList history={history} shop={shop} />
          {cameBy && (
            <p className="soft">
              Taken in by the list <Link href={`/stock/exchange/${cameBy.id}`}>{cameBy.fileName}</Link>,{' '}
              {formatInstant(cameBy.at, shop.timeZone, wordsFor(shop.words).locale)}, {cameBy.person}.
            </p>
          )}
        </div>
      </div>
    </Shell>
  )
}
