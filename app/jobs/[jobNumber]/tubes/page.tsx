import type { Metadata } from 'next'
import Link from 'next/link'
import { outputGroups } from '@/lib/domain/bench/bench-result'
import type { Job } from '@/lib/domain/job/job'
import { isClosed } from '@/lib/domain/job/job-state'
import { type Quote, quoteTitle } from '@/lib/domain/quote/quote'
import { capital, wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { findCarrying } from '@/lib/store/carrying'
import { findLatestQuote } from '@/lib/store/quote'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { planBasis } from '@/lib/workflow/tubes/plan-basis'
import { latestBench } from '../latest-bench'
import { requireHead } from '../require-head'
import { ExchangedNote } from './exchange/exchanged-note'
import { GroupChoice } from './group-choice'
import { LimitsForm, readLimits } from './limits-form'
import { PhaseInverter } from './phase-inverter'

export const metadata: Metadata = { title: 'Choose a set' }

/** What the step would say, before anybody chooses in vain. */
function choiceRefused({ state }: Job, quote: Quote | null): StepFault | null {
  if (isClosed(state)) return { code: 'job-closed', state }
  if (quote === null || quote.state === 'draft') return null
  return { code: 'quote-not-draft', quote: quoteTitle(quote), state: quote.state }
}

export default async function TubesPage({ params, searchParams }: PageProps<'/jobs/[jobNumber]/tubes'>) {
  const { shop } = await requireUser()
  const { job } = await requireHead(params)
  // First of all: what changes while the rest is read is then noticed too.
  const seen = await planBasis(job, shop)
  const [bench, quote, { corrections }] = await Promise.all([
    latestBench(job, shop),
    findLatestQuote(job.id),
    findCarrying(),
  ])
  const query = await searchParams
  const limits = readLimits(query, shop)
  const groups = outputGroups(bench.sheet)
  const words = wordsFor(shop.words)
  const refusal = choiceRefused(job, quote)
  return (
    <>
      <div className="row spread">
        <h2>{capital(words.tubes)} from stock</h2>
        <Link href={`/amps/${job.ampId}/substitutes`}>What else may go in</Link>
      </div>
      {refusal && (
        <p className="form-message">
          {stepFaultText(refusal, shop)} The sets below are what could be chosen now.{' '}
          <Link href={`/jobs/${job.number}/quote`}>To the quote</Link>
        </p>
      )}
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
          <GroupChoice
            key={group}
            {...{ group, bench, job, shop, limits, quote }}
            mayChoose={!refusal}
            planBasis={seen}
          />
        ))}
      {limits.faults.length === 0 &&
        bench.sheet.sockets
          .filter(({ role }) => role === 'phase-inverter')
          .map((socket) => (
            <PhaseInverter key={socket.id} socket={socket} {...{ job, shop, limits, quote }} mayChoose={!refusal} />
          ))}
    </>
  )
}
