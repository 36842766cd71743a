import type { Metadata } from 'next'
import Link from 'next/link'
import { outputGroups } from '@/lib/domain/bench/bench-result'
import { capital, wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { findCarrying } from '@/lib/store/carrying'
import { findLatestQuote } from '@/lib/store/quote'
import { latestBench } from '../latest-bench'
import { requireHead } from '../require-head'
import { ExchangedNote } from './exchange/exchanged-note'
import { GroupChoice } from './group-choice'
import { LimitsForm, readLimits } from './limits-form'
import { PhaseInverter } from './phase-inverter'

export const metadata: Metadata = { title: 'Choose a set' }

export default async function TubesPage({ params, searchParams }: PageProps<'/jobs/[jobNumber]/tubes'>) {
  const { shop } = await requireUser()
  const { job } = await requireHead(params)
  const [bench, quote, { corrections }] = await Promise.all([
    latestBench(job, shop),
    findLatestQuote(job.id),
    findCarrying(),
  ])
  const query = await searchParams
  const limits = readLimits(query, shop)
  const groups = outputGroups(bench.sheet)
  const words = wordsFor(shop.words)
  return (
    <>
      <div className="row spread">
        <h2>{capital(words.tubes)} from stock</h2>
        <Link href={`/amps/${job.ampId}/substitutes`}>What else may go in</Link>
      </div>
      <ExchangedNote query={query} quote={quote} jobNumber={job.number} work={false} />
      <LimitsForm
        action={`/jobs/${job.number}/tubes`}
        limits={limits}
        shop={shop}
        weightsHref={`/jobs/${job.number}/tubes/weights`}
        instruments={[...new Set(corrections.flatMap(({ from, to }) => [from, to]))].sort()}
      />
      {groups.length === 0 && (
        <p className="form-message">
          {bench.sheet.sockets.length === 0
            ? 'No socket is on the sheet yet. '
            : `No output socket is on the sheet, so no set is matched; single ${words.tubes} go on the quote as parts. `}
          <Link href={`/amps/${job.ampId}/sheet`}>To the sheet</Link>
        </p>
      )}
      {limits.faults.length === 0 &&
        groups.map((group) => (
          <GroupChoice key={group} group={group} bench={bench} job={job} shop={shop} limits={limits} quote={quote} />
        ))}
      {limits.faults.length === 0 &&
        bench.sheet.sockets
          .filter(({ role }) => role === 'phase-inverter')
          .map((socket) => (
            <PhaseInverter key={socket.id} socket={socket} job={job} shop={shop} limits={limits} quote={quote} />
          ))}
    </>
  )
}
