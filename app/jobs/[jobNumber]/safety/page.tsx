import type { Metadata } from 'next'
import { BenchCautions } from '@/app/_components/bench/bench-cautions'
import { formatDay } from '@/lib/domain/calendar'
import { isClosed } from '@/lib/domain/job/job-state'
import { dutyNeeds, mayDo } from '@/lib/domain/person/role'
import { hottest, hottestText } from '@/lib/domain/safety/idle-evidence'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listInstruments } from '@/lib/store/instrument'
import { type SafetyState, safetyState } from '@/lib/workflow/work/safety-state'
import { requireHead } from '../require-head'
import { AfterReadings } from './after-readings'
import { Release } from './release'
import styles from './safety.module.css'
import { SafetyLine } from './safety-line'

export const metadata: Metadata = { title: 'After the work' }

export default async function SafetyPage({ params }: PageProps<'/jobs/[jobNumber]/safety'>) {
  const { actor, shop } = await requireUser()
  const { job } = await requireHead(params)
  const [state, instruments] = await Promise.all([safetyState(job, shop), listInstruments()])
  const { locale } = wordsFor(shop.words)
  const options = instruments
    .filter(({ active }) => active)
    .map(({ id, name, calibratedOn }) => ({
      value: id,
      text: `${name}, ${calibratedOn ? `cal. ${formatDay(calibratedOn, locale)}` : 'never calibrated'}`,
    }))
  const open = !isClosed(job.state)
  const may = open && mayDo(actor, 'sign-off')
  return (
    <>
      <BenchCautions words={wordsFor(shop.words)} />
      <AfterReadings state={state} jobNumber={job.number} shop={shop} open={open && mayDo(actor, 'bench-work')} />
      <section className="stack" aria-labelledby="sign-off">
        <h2 id="sign-off">Safety sign-off</h2>
        <p className="soft">
          Each line is signed for itself. Limits are the shop’s settings or stand with their source; they are no law,
          and local codes and licensed practice come first.
          {open && !may && ` ${dutyNeeds('sign-off')}`}
        </p>
        <ol className={styles.lines}>
          {state.lines.map((gate, index) => (
            <SafetyLine
              key={gate.check.id}
              gate={gate}
              place={index + 1}
              jobNumber={job.number}
              instruments={options}
              evidence={gate.check.id === 'idle' ? idleText(state) : null}
              shop={shop}
              may={may}
            />
          ))}
        </ol>
      </section>
      <Release job={job} lines={state.lines} actor={actor} />
    </>
  )
}

function idleText({ context }: SafetyState): string {
  const most = context.idle && hottest(context.idle)
  return most
    ? `By the last readings after the work, ${hottestText(most)}.`
    : 'No readings after the work say anything yet.'
}
