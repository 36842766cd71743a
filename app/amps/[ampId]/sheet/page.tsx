import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { Shell } from '@/app/_components/shell/shell'
import { ampTitle } from '@/lib/domain/amp/amp'
import { socketBaseOf } from '@/lib/domain/amp/socket-base'
import { listDesignations } from '@/lib/domain/tube/list-designations'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { findAmpSheet, listAmpsOfModel } from '@/lib/store/amp'
import { CopySheet } from '../../copy-sheet'
import { SheetForm } from './sheet-form'
import { sheetFormValues } from './sheet-schema'

export const metadata: Metadata = { title: 'Amplifier sheet' }

export default async function SheetPage({ params }: PageProps<'/amps/[ampId]/sheet'>) {
  const { actor, shop } = await requireUser()
  const { ampId } = await params
  const sheet = await findAmpSheet(ampId)
  if (!sheet) notFound()
  const { amp, sockets } = sheet
  const sameModel = sockets.length === 0 ? await listAmpsOfModel(amp.make, amp.model) : []
  const bases = [...listDesignations(shop), ...sockets.map(({ typeFitted }) => typeFitted)].map(
    (type) => [type, socketBaseOf(type, shop)] as const,
  )
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>Sheet of {ampTitle(amp)}</h1>
        <Link href={`/amps/${ampId}`}>Back to the amplifier</Link>
      </div>
      <CopySheet onto={amp} from={sameModel.filter(({ id, socketCount }) => id !== ampId && socketCount > 0)} />
      <SheetForm
        values={sheetFormValues(sheet)}
        title={ampTitle(amp)}
        words={wordsFor(shop.words)}
        designations={listDesignations(shop)}
        catalogue={{ ownTypes: shop.ownTypes }}
        bases={Object.fromEntries(bases)}
      />
    </Shell>
  )
}
