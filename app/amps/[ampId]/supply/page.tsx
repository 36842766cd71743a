import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { Shell } from '@/app/_components/shell/shell'
import { ampTitle } from '@/lib/domain/amp/amp'
import { listDesignationsByRole } from '@/lib/domain/tube/list-designations'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { findAmp } from '@/lib/store/amp'
import { findSupply } from '@/lib/store/amp-supply'
import { SupplyForm } from './supply-form'
import { supplyValues } from './supply-schema'

export const metadata: Metadata = { title: 'Supply and bias' }

export default async function SupplyPage({ params }: PageProps<'/amps/[ampId]/supply'>) {
  const { actor, shop } = await requireUser()
  const { ampId } = await params
  const [amp, facts] = await Promise.all([findAmp(ampId), findSupply(ampId)])
  if (!amp) notFound()
  const known = listDesignationsByRole(shop).find(({ role }) => role === 'rectifier')?.designations ?? []
  const noted = facts.rectifierType
  const rectifiers = noted && !known.includes(noted) ? [...known, noted] : known
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>Supply and bias of {ampTitle(amp)}</h1>
        <Link href={`/amps/${ampId}`}>Back to the amplifier</Link>
      </div>
      <div className="caution">
        <strong>Lethal voltage remains after unplugging.</strong> Discharge and prove it with a meter before touching
        anything. Local codes and licensed practice come first.
      </div>
      <section className="panel">
        <SupplyForm
          values={supplyValues(ampId, amp.version, facts)}
          words={wordsFor(shop.words)}
          rectifiers={rectifiers}
        />
      </section>
    </Shell>
  )
}
