/** One round: when, with what, and what it says. */
import Link from 'next/link'
import { BenchReport } from '@/app/_components/bench/bench-report'
import { ChassisDrawing } from '@/app/_components/chassis/chassis-drawing'
import { chassisWords } from '@/app/_components/chassis/chassis-words'
import { socketViews } from '@/app/_components/chassis/socket-views'
import { GroupPlots } from '@/app/_components/plot/group-plots'
import { type AmpSheet, ampName } from '@/lib/domain/amp/amp'
import { benchResult, idleWindows } from '@/lib/domain/bench/bench-result'
import { crossChecks } from '@/lib/domain/bench/cross-check'
import type { ReadingSet } from '@/lib/domain/bench/reading-set'
import { formatDay, formatInstant } from '@/lib/domain/calendar'
import { groupLoad } from '@/lib/domain/plot/group-load'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { strikeRound } from './actions'

type Props = {
  readonly set: ReadingSet
  readonly sheet: AmpSheet
  readonly shop: Shop
  readonly jobNumber: string
  /** Whoever looks at it may correct it. */
  readonly may: boolean
}

export function ReadingRound({ set, sheet, shop, jobNumber, may }: Props) {
  const words = wordsFor(shop.words)
  const result = benchResult(sheet, set, shop)
  const checks = crossChecks({ sheet, set, windows: idleWindows(shop), catalogue: shop }, result.sockets)
  const when = formatInstant(set.takenAt, shop.timeZone, words.locale)
  const calibrated = set.calibratedOn
    ? `calibrated ${formatDay(set.calibratedOn, words.locale)}`
    : 'calibration date not known'
  return (
    <section className="panel stack" aria-labelledby={`round-${set.id}`}>
      <div className="panel-head">
        <h2 id={`round-${set.id}`}>{set.phase === 'before' ? 'Before the work' : 'After the work'}</h2>
        <span className="soft">
          {when} · {set.takenBy} · {set.instrumentName}, {calibrated} · wall {set.wallVolts} V · warmed up{' '}
          {set.warmupMinutes} min · {set.signalState}
        </span>
      </div>
      <ChassisDrawing
        title={ampName(sheet.amp)}
        titleLines={[when]}
        sockets={socketViews(sheet, result, shop)}
        words={chassisWords(words)}
      />
      <BenchReport result={result} words={words} checks={checks} />
      <GroupPlots
        rounds={[{ when: null, result }]}
        words={words}
        loadOf={(group) => groupLoad(sheet, group)}
        catalogue={shop}
      />
      {set.note && <p>{set.note}</p>}
      {may && <Corrections jobNumber={jobNumber} setId={set.id} />}
    </section>
  )
}

function Corrections({ jobNumber, setId }: { jobNumber: string; setId: string }) {
  return (
    <div className="row no-print">
      <Link className="button quiet" href={`/jobs/${jobNumber}/bench/${setId}`}>
        Correct these readings
      </Link>
      <details>
        <summary className="button plain">Strike out this round…</summary>
        <form action={strikeRound.bind(null, jobNumber, setId)}>
          <p>The figures stay in the history. Nothing else changes.</p>
          <button type="submit" className="button quiet">
            Strike out
          </button>
        </form>
      </details>
    </div>
  )
}
