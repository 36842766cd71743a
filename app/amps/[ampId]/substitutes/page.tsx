import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { Shell } from '@/app/_components/shell/shell'
import { ampTitle } from '@/lib/domain/amp/amp'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listFreeStock } from '@/lib/store/free-stock'
import { findKnownAmp } from '../../known-amp'
import { askableSockets, readAsked } from './asked'
import { SocketAnswers } from './socket-answers'
import { SocketPicker } from './socket-picker'

export const metadata: Metadata = { title: 'What may go in' }

export default async function SubstitutesPage({ params, searchParams }: PageProps<'/amps/[ampId]/substitutes'>) {
  const { actor, shop } = await requireUser()
  const { ampId } = await params
  const known = await findKnownAmp(ampId, shop)
  if (!known) notFound()
  const words = wordsFor(shop.words)
  const sockets = askableSockets(known)
  const asked = readAsked(await searchParams, sockets)
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>What may go into {ampTitle(known.sheet.amp)}</h1>
        <Link href={`/amps/${ampId}`}>Back to the amplifier</Link>
      </div>
      {asked === null ? (
        <p className="form-message">
          No socket of this amplifier has a type that is known here.{' '}
          <Link href={`/amps/${ampId}/sheet`}>To the sheet</Link>
        </p>
      ) : (
        <>
          <SocketPicker ampId={ampId} sockets={sockets} asked={asked} words={words} />
          <SocketAnswers known={known} asked={asked} free={await listFreeStock(new Date())} shop={shop} />
        </>
      )}
    </Shell>
  )
}
