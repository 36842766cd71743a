/** What still stands in the way, and the button that releases the amplifier. */
import Link from 'next/link'
import type { Job } from '@/lib/domain/job/job'
import { jobStateWord } from '@/lib/domain/job/job-state'
import { type Actor, dutyNeeds, mayDo } from '@/lib/domain/person/role'
import { type GateLine, releaseGate } from '@/lib/domain/safety/release-gate'
import { PressForm } from '../press-form'
import { pressRelease } from './actions'

export function Release({ job, lines, actor }: { job: Job; lines: readonly GateLine[]; actor: Actor }) {
  const gate = releaseGate(lines)
  const may = mayDo(actor, 'sign-off')
  return (
    <section className="panel stack" aria-labelledby="release">
      <h2 id="release">Release</h2>
      {gate.ok ? <p>Every line is signed and none fails.</p> : <Blocked {...gate.fault} />}
      {job.state === 'ready' && (
        <p>
          The amplifier is released. <Link href={`/jobs/${job.number}/pickup`}>To the pickup</Link>
        </p>
      )}
      {job.state === 'testing' && may && (
        <PressForm action={pressRelease.bind(null, job.number)}>Release the amplifier</PressForm>
      )}
      {job.state === 'testing' && !may && <p className="soft">{dutyNeeds('sign-off')}</p>}
      {job.state !== 'testing' && job.state !== 'ready' && (
        <p className="soft">The job is “{jobStateWord(job.state)}”; it is released from “testing”.</p>
      )}
    </section>
  )
}

type BlockedProps = Extract<ReturnType<typeof releaseGate>, { ok: false }>['fault']

function Blocked({ open, failed, outdated }: BlockedProps) {
  return (
    <dl className="facts">
      {failed.length > 0 && <Names title="Fails" names={failed} />}
      {outdated.length > 0 && (
        <Names title="To be signed again" names={outdated.map(({ name, why }) => `${name}: ${why}`)} />
      )}
      {open.length > 0 && <Names title="Not signed yet" names={open} />}
    </dl>
  )
}

const Names = ({ title, names }: { title: string; names: readonly string[] }) => (
  <>
    <dt>{title}</dt>
    <dd>{names.join('\n')}</dd>
  </>
)
