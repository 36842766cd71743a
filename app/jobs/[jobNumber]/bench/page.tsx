import type { Metadata } from 'next'
import Link from 'next/link'
import { BenchCautions } from '@/app/_components/bench/bench-cautions'
import { sheetAsOf } from '@/lib/domain/amp/fitting'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { findAmpSheet } from '@/lib/store/amp'
import { listFittingsOfAmp } from '@/lib/store/fitting'
import { listReadingSets } from '@/lib/store/reading-set'
import { requireHead } from '../require-head'
import { readingsBarredText } from './bench-duty'
import { CircuitPanels } from './circuit-panels'
import { knownCircuit } from './known-circuit'
import { ReadingRound } from './reading-round'

export const metadata: Metadata = { title: 'Bench' }

export default async function BenchPage({ params, searchParams }: PageProps<'/jobs/[jobNumber]/bench'>) {
  const { actor, shop } = await requireUser()
  const { job } = await requireHead(params)
  const [sheet, sets, fittings] = await Promise.all([
    findAmpSheet(job.ampId),
    listReadingSets(job.id),
    listFittingsOfAmp(job.ampId),
  ])
  const words = wordsFor(shop.words)
  const [latest, ...earlier] = sets
  const barred = readingsBarredText(job, actor)
  const hasOutput = sheet?.sockets.some(({ role }) => role === 'output')
  return (
    <>
      <div className="row spread">
        <h2>Readings</h2>
        {barred === '' ? (
          <p className="row">
            <Link className="button" href={`/jobs/${job.number}/bench/new?phase=before`}>
              Readings before the work
            </Link>
            <Link className="button quiet" href={`/jobs/${job.number}/bench/new?phase=after`}>
              Readings after the work
            </Link>
          </p>
        ) : (
          <p className="soft">{barred}</p>
        )}
      </div>
      {!hasOutput && (
        <p className="form-message">
          {sheet && sheet.sockets.length > 0
            ? 'No output socket is on this amplifier’s sheet: volts are kept, idle is not judged. '
            : 'No socket is on this amplifier’s sheet yet. '}
          <Link href={`/amps/${job.ampId}/sheet`}>To the sheet</Link>
        </p>
      )}
      <BenchCautions words={words} />
      {sets.length === 0 && <p className="soft">No readings yet.</p>}
      {sheet && latest && (
        <ReadingRound
          set={latest}
          sheet={sheetAsOf(sheet, fittings, latest.takenAt)}
          shop={shop}
          jobNumber={job.number}
          may={barred === ''}
        />
      )}
      {sheet && latest && hasOutput && (
        <CircuitPanels
          known={await knownCircuit({ sheet, fittings, set: latest }, shop)}
          sheetNow={sheet}
          shop={shop}
          action={`/jobs/${job.number}/bench`}
          query={await searchParams}
          now={new Date()}
        />
      )}
      {sheet && earlier.length > 0 && (
        <details>
          <summary className="button plain">Earlier rounds ({earlier.length})</summary>
          <div className="stack">
            {earlier.map((set) => (
              <ReadingRound
                key={set.id}
                set={set}
                sheet={sheetAsOf(sheet, fittings, set.takenAt)}
                shop={shop}
                jobNumber={job.number}
                may={barred === ''}
              />
            ))}
          </div>
        </details>
      )}
    </>
  )
}
