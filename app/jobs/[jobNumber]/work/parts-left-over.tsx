/** Parts that left their drawer for this job and that no ticked line uses, as after a revision. */
import Link from 'next/link'
import type { PartLeftOver } from '@/lib/domain/stock/part-standing'
import { PressForm } from '../press-form'
import { pressGiveBack } from './actions'

type Props = { readonly leftOver: readonly PartLeftOver[]; readonly jobNumber: string; readonly may: boolean }

export function PartsLeftOver({ leftOver, jobNumber, may }: Props) {
  if (leftOver.length === 0) return null
  return (
    <section className="panel stack" aria-labelledby="left-over">
      <h2 id="left-over">Taken from the drawers, and not ticked as used</h2>
      {leftOver.map(({ partId, name, pieces }) => (
        <div key={partId} className="row spread">
          <span>
            {pieces} × <Link href={`/stock/parts/${partId}`}>{name}</Link>
          </span>
          {may && (
            <PressForm action={pressGiveBack.bind(null, { jobNumber, partId })} quiet>
              Back in the drawer<span className="sr-only">: {name}</span>
            </PressForm>
          )}
        </div>
      ))}
    </section>
  )
}
