/** A long computation on its way: how far it is, and the way out. What became of one that gave no result. */
import Link from 'next/link'
import type { PlanningFault } from '@/lib/planning/planning-run'
import { KeepLooking } from './keep-looking'

type WaitProps = {
  readonly title: string
  /** Null: it has told nothing yet. */
  readonly told: string | null
  readonly waiting: boolean
  readonly here: string
  readonly cancel: () => Promise<void>
}

export function PlanningWait({ title, told, waiting, here, cancel }: WaitProps) {
  return (
    <section className="panel stack" aria-labelledby="planning">
      <h2 id="planning">{title}</h2>
      <p role="status">
        {waiting ? 'Another computation is at work; this one is next in turn.' : (told ?? 'At work.')}
      </p>
      <p className="soft">Other pages can be used meanwhile; this one shows the result when it is there.</p>
      <form action={cancel} className="row no-print">
        <Link className="button" href={here}>
          Look again
        </Link>
        <button type="submit" className="button quiet">
          Cancel
        </button>
      </form>
      <KeepLooking />
    </section>
  )
}

/** Null: it is not known here any more. */
export function PlanningEnd({ fault, anew }: { readonly fault: PlanningFault | null; readonly anew: string }) {
  return (
    <section className="panel stack">
      <p>{endText(fault)}</p>
      <p>
        <Link className="button" href={anew}>
          Work it out anew
        </Link>
      </p>
    </section>
  )
}

function endText(fault: PlanningFault | null): string {
  if (fault === null)
    return 'This result is no longer at hand: it was worked out some time ago, or before the last start.'
  if (fault.kind === 'cancelled') return 'Cancelled. Nothing was written down.'
  return `It could not be worked out (${fault.name}: ${fault.message}). Nothing was written down.`
}
