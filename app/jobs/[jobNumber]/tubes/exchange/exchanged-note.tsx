/** What was just exchanged, and the way back by the same step. */
import Link from 'next/link'
import type { Quote } from '@/lib/domain/quote/quote'
import { listTubesById } from '@/lib/store/tube'
import { exchangeAddress } from './exchange-address'

type Props = {
  readonly query: Record<string, string | string[] | undefined>
  readonly quote: Quote | null
  readonly jobNumber: string
  readonly work: boolean
}

/** The address says which one went; what stands there now is looked up. */
export async function ExchangedNote({ query, quote, jobNumber, work }: Props) {
  const { exchanged, was } = query
  if (typeof exchanged !== 'string' || typeof was !== 'string') return null
  const line = quote?.lines.find(({ kind, socketPosition }) => kind === 'tube' && socketPosition === exchanged)
  const [now] = line?.tubeId ? await listTubesById([line.tubeId]) : []
  if (!now || now.tube.mark === was || now.tube.whereabouts !== 'in-stock') return null
  return (
    <p className="form-message" data-status="saved" role="status">
      {exchanged} is to have {now.tube.mark} in place of {was}.{' '}
      <Link className="button quiet" href={exchangeAddress(jobNumber, { position: exchanged, mark: was, work })}>
        Exchange back for {was}
      </Link>
    </p>
  )
}
