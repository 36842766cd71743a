/** The form with what it starts from: the sheet's sockets and the shop's meters. */
import Link from 'next/link'
import { onceMark } from '@/app/_components/form/once'
import type { Phase, ReadingSet } from '@/lib/domain/bench/reading-set'
import type { Job } from '@/lib/domain/job/job'
import type { Actor } from '@/lib/domain/person/role'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { findAmpSheet } from '@/lib/store/amp'
import { listInstruments } from '@/lib/store/instrument'
import { submitReadings } from './actions'
import { readingsBarredText } from './bench-duty'
import { pinHints } from './pin-hints'
import { ReadingsForm } from './readings-form'
import { readingsValues } from './readings-schema'

type Props = {
  readonly job: Job
  readonly shop: Shop
  readonly actor: Actor
  readonly set: ReadingSet | null
  readonly phase: Phase
}

export async function ReadingsSheet({ job, shop, actor, set, phase }: Props) {
  const barred = readingsBarredText(job, actor)
  if (barred !== '') return <p className="form-message">{barred}</p>
  const [sheet, instruments] = await Promise.all([findAmpSheet(job.ampId), listInstruments()])
  const meters = instruments.filter(({ id, kind, active }) => (kind === 'meter' && active) || id === set?.instrumentId)
  const sockets = sheet?.sockets ?? []
  if (sockets.length === 0)
    return (
      <p className="form-message">
        This amplifier's sheet has no sockets yet. <Link href={`/amps/${job.ampId}/sheet`}>Note them first.</Link>
      </p>
    )
  if (meters.length === 0)
    return (
      <p className="form-message">
        No meter is known to the shop, so no accuracy either. <Link href="/settings/instruments">Enter one first.</Link>
      </p>
    )
  const words = wordsFor(shop.words)
  const start = { phase, instrumentId: meters[0]?.id ?? '', wallVolts: '' }
  const options = meters.map(({ id, name }) => ({ value: id, text: name }))
  // Output sockets first: they are what is read under time pressure.
  const ordered = [...sockets].sort(
    (a, b) => Number(b.role === 'output') - Number(a.role === 'output') || a.place - b.place,
  )
  return (
    <ReadingsForm
      action={submitReadings.bind(null, job.number)}
      values={{ ...readingsValues(ordered, set, start, words), once: set ? '' : onceMark() }}
      sockets={ordered}
      pins={Object.fromEntries(ordered.map((socket) => [socket.id, pinHints(socket, shop)]))}
      instruments={options}
      wordSet={shop.words}
      markedMainsVolts={sheet?.amp.mainsVolts ?? shop.mainsVolts}
    />
  )
}
