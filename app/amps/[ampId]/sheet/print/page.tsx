import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { Shell } from '@/app/_components/shell/shell'
import { ampTitle } from '@/lib/domain/amp/amp'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { findAmpSheet } from '@/lib/store/amp'
import { findSupply } from '@/lib/store/amp-supply'
import { SheetChassis } from '../../../sheet-chassis'
import { SupplyTable } from '../../../supply-table'
import { ValuesTable } from './values-table'

export const metadata: Metadata = { title: 'Amplifier sheet' }

/** One page to lay beside the amplifier; the browser prints it. */
export default async function PrintSheetPage({ params }: PageProps<'/amps/[ampId]/sheet/print'>) {
  const { actor, shop } = await requireUser()
  const { ampId } = await params
  const sheet = await findAmpSheet(ampId)
  if (!sheet) notFound()
  const { amp, sockets } = sheet
  const supply = await findSupply(ampId)
  const words = wordsFor(shop.words)
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>{ampTitle(amp)}</h1>
        <Link className="no-print" href={`/amps/${ampId}`}>
          Back to the amplifier
        </Link>
      </div>
      <p>
        Marked {amp.mainsVolts} V {words.mains} · protection class{' '}
        {amp.protectionClass === 'unknown' ? 'not known' : amp.protectionClass} · fuse {amp.fuse || 'not noted'} ·{' '}
        {amp.outputClass}
      </p>
      <div className="caution">
        <strong>Lethal voltage remains after unplugging.</strong> Discharge and prove it with a meter before touching
        anything. Local codes and licensed practice come first.
      </div>
      <SheetChassis sheet={sheet} words={words} catalogue={shop} />
      <ValuesTable sockets={sockets} words={words} />
      <h2>Supply and bias</h2>
      <SupplyTable facts={supply} words={words} />
    </Shell>
  )
}
