import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { Shell } from '@/app/_components/shell/shell'
import { AnswerTag } from '@/app/_components/substitution/answer-tag'
import { FindingsList } from '@/app/_components/substitution/findings-list'
import { findKnownAmp } from '@/app/amps/known-amp'
import type { JobLine } from '@/lib/domain/job/job'
import type { Shop } from '@/lib/domain/shop/shop'
import { ampSocket } from '@/lib/domain/substitution/socket-of-sheet'
import { ANSWERS, type Substitute, substitute } from '@/lib/domain/substitution/substitute'
import { READ_AFTER_FITTING } from '@/lib/domain/substitution/substitution-text'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listOpenJobs } from '@/lib/store/job'
import { findTube } from '@/lib/store/tube'

export const metadata: Metadata = { title: 'Where it could go' }

export default async function UsesPage({ params }: PageProps<'/stock/[tubeId]/uses'>) {
  const { actor, shop } = await requireUser()
  const tube = await findTube((await params).tubeId)
  if (!tube) notFound()
  const variant = findTubeType(tube.designation, shop)
  const words = wordsFor(shop.words)
  const uses = variant ? await usesOnTheShelf(variant, shop) : []
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>
          Where {tube.mark} <span className="soft">{tube.designation}</span> could go
        </h1>
        <Link href={`/stock/${tube.id}`}>Back to the {words.tube}</Link>
      </div>
      {!variant && <p className="form-message">{tube.designation} is not known here, so nothing can be compared.</p>}
      {variant && uses.length === 0 && (
        <p className="form-message">No amplifier in the shop has a socket of its kind and base.</p>
      )}
      {uses.length > 0 && (
        <>
          <div className="caution">
            <strong>Computed and looked up, not measured.</strong> {READ_AFTER_FITTING}
          </div>
          <UsesTable uses={uses} />
        </>
      )}
    </Shell>
  )
}

type Use = { readonly job: JobLine; readonly ampId: string; readonly position: string; readonly answer: Substitute }

function UsesTable({ uses }: { uses: readonly Use[] }) {
  return (
    <div className="panel table-scroll">
      <table>
        <thead>
          <tr>
            <th>Amplifier</th>
            <th>Socket</th>
            <th>Answer</th>
            <th>Why</th>
          </tr>
        </thead>
        <tbody>
          {uses.map(({ job, ampId, position, answer }) => (
            <tr key={`${job.number} ${position}`}>
              <th scope="row">
                <Link href={`/amps/${ampId}/substitutes?socket=${encodeURIComponent(position)}`}>{job.ampName}</Link>{' '}
                <span className="soft">job {job.number}</span>
              </th>
              <td>{position}</td>
              <td>
                <AnswerTag answer={answer.answer} />
              </td>
              <td>
                <FindingsList findings={answer.findings} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** Amplifiers with an open job; sockets of the tube's own kind and base, the best answers first. */
async function usesOnTheShelf(variant: TubeVariant, shop: Shop): Promise<Use[]> {
  const rules = { catalogue: shop, words: wordsFor(shop.words), allowOverPrintedRating: false }
  const uses: Use[] = []
  for (const job of await listOpenJobs()) {
    const known = await findKnownAmp(job.ampId, shop)
    const sockets = known?.sheet.sockets.flatMap((socket) => ampSocket(socket, known) ?? []) ?? []
    const seen = new Set<string>()
    for (const socket of sockets) {
      if (seen.has(socket.position) || socket.made.role !== variant.role) continue
      seen.add(socket.position)
      const answer = substitute(variant, socket, rules)
      const apart = answer.findings.some(({ check }) => check === 'kind' || check === 'base')
      if (!apart) uses.push({ job, ampId: job.ampId, position: socket.position, answer })
    }
  }
  return uses.sort((a, b) => ANSWERS.indexOf(a.answer.answer) - ANSWERS.indexOf(b.answer.answer))
}
