import type { Metadata } from 'next'
import Link from 'next/link'
import { PlanningEnd, PlanningWait } from '@/app/_components/planning/planning-state'
import { Shell } from '@/app/_components/shell/shell'
import { setsProgressText } from '@/lib/planning/sets/sets-text'
import { requireUser } from '@/lib/session'
import { StockSections } from '../../stock-sections'
import { cancelSets } from '../actions'
import { endedSets, setsRun } from '../ended-sets'
import { SetsResult } from './sets-result'

export const metadata: Metadata = { title: 'Sets' }

export default async function MadeSetsPage({ params }: PageProps<'/stock/sets/[runId]'>) {
  const { actor, shop } = await requireUser()
  const { runId } = await params
  const run = setsRun(runId)
  const ended = await endedSets(runId)
  const told = run?.progress() ?? null
  return (
    <Shell shop={shop} actor={actor}>
      <StockSections words={shop.words} section="/stock/sets" />
      <div className="page-head">
        <h1>Sets</h1>
        <Link className="no-print" href="/stock/sets">
          Other types or limits
        </Link>
      </div>
      {run && !ended && (
        <PlanningWait
          title="Sets are being made up"
          told={told && setsProgressText(told)}
          waiting={run.state() === 'waiting'}
          here={`/stock/sets/${runId}`}
          cancel={cancelSets.bind(null, runId)}
        />
      )}
      {!run && <PlanningEnd fault={null} anew="/stock/sets" />}
      {ended && !ended.ok && <PlanningEnd fault={ended.fault} anew="/stock/sets" />}
      {ended?.ok && <SetsResult plan={ended.value} runId={runId} shop={shop} />}
    </Shell>
  )
}
