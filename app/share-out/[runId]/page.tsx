import type { Metadata } from 'next'
import Link from 'next/link'
import { PlanningEnd, PlanningWait } from '@/app/_components/planning/planning-state'
import { Shell } from '@/app/_components/shell/shell'
import { progressText } from '@/lib/planning/sharing/share-text'
import { requireUser } from '@/lib/session'
import { cancelShare } from '../actions'
import { endedShare, shareRun } from '../ended-share'
import { ShareResult } from './share-result'

export const metadata: Metadata = { title: 'Share out' }

export default async function SharedPage({ params }: PageProps<'/share-out/[runId]'>) {
  const { actor, shop } = await requireUser()
  const { runId } = await params
  const run = shareRun(runId)
  const ended = await endedShare(runId)
  const told = run?.progress() ?? null
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>Share out</h1>
        <Link className="no-print" href="/share-out">
          Other jobs or limits
        </Link>
      </div>
      {run && !ended && (
        <PlanningWait
          title="The stock is being shared out"
          told={told && progressText(told)}
          waiting={run.state() === 'waiting'}
          here={`/share-out/${runId}`}
          cancel={cancelShare.bind(null, runId)}
        />
      )}
      {!run && <PlanningEnd fault={null} anew="/share-out" />}
      {ended && !ended.ok && <PlanningEnd fault={ended.fault} anew="/share-out" />}
      {ended?.ok && <ShareResult plan={ended.value} runId={runId} shop={shop} />}
    </Shell>
  )
}
