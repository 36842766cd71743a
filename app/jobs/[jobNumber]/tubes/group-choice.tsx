/** One output group: what it asks for, the sets that answer, and why the others lost. */

import { demandFaultText } from '@/lib/domain/bench/demand-fault-text'
import type { GroupDemand } from '@/lib/domain/bench/group-demand'
import type { ReadingSet } from '@/lib/domain/bench/reading-set'
import { voltsText, wattsText } from '@/lib/domain/bias/bias-figures'
import { formatDay } from '@/lib/domain/calendar'
import type { Job } from '@/lib/domain/job/job'
import { instrumentsText } from '@/lib/domain/matching/carried-text'
import type { SetArrangement } from '@/lib/domain/matching/match-weights'
import { arrangementName } from '@/lib/domain/matching/match-weights-text'
import {
  type MatchingFormat,
  proposalCautionText,
  proposalText,
  relaxationText,
} from '@/lib/domain/matching/matching-text'
import type { Proposal } from '@/lib/domain/matching/proposal'
import { unsafeText } from '@/lib/domain/matching/safe-margins-text'
import { formatMoney } from '@/lib/domain/money'
import type { Quote } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import type { PlanBasis } from '@/lib/domain/stock/plan-basis'
import { capital, type Words, wordsFor } from '@/lib/domain/words'
import type { LatestBench } from '../latest-bench'
import { ChosenSet } from './chosen-set'
import { type Basis, proposeForGroup, shownSets } from './group-proposal'
import type { Limits } from './limits-form'
import { LostTubes } from './lost-tubes'
import { SetCard } from './set-card'
import { StockPlot } from './stock-plot'

type Props = {
  readonly group: string
  readonly bench: LatestBench
  readonly job: Job
  readonly shop: Shop
  readonly limits: Limits
  readonly quote: Quote | null
  readonly mayChoose: boolean
  readonly planBasis: PlanBasis
}

export async function GroupChoice({ group, bench, job, shop, limits, quote, mayChoose, planBasis }: Props) {
  const words = wordsFor(shop.words)
  const asked = await proposeForGroup({ group, bench, job, shop, limits })
  if (!asked.ok)
    return (
      <section className="panel">
        <h2>Group “{group}”</h2>
        <p>{demandFaultText(asked.fault, words)}</p>
      </section>
    )
  const { wanted, proposal, basis, instruments } = asked.value
  const shown = shownSets(proposal)
  const format: MatchingFormat = { words, formatMoney: (amount) => formatMoney(amount, shop.currency, words.locale) }
  const positions = new Set(wanted.sockets.map(({ position }) => position))
  const chosen = (quote?.lines ?? []).filter(
    ({ kind, socketPosition }) => kind === 'tube' && positions.has(socketPosition ?? ''),
  )
  return (
    <section className="panel stack" aria-labelledby={`group-${group}`}>
      <div className="panel-head">
        <h2 id={`group-${group}`}>Group “{group}”</h2>
        <span className="soft">{asksText(wanted, bench.set, words)}</span>
      </div>
      {quote && chosen.length > 0 && (
        <ChosenSet lines={chosen} quote={quote} jobNumber={job.number} group={group} words={words} />
      )}
      {proposal.cautions.map((caution) => (
        <p key={caution.code} className="soft">
          {proposalCautionText(caution, format)}
        </p>
      ))}
      <BasisLine basis={basis} arrangement={wanted.demand.arrangement} words={words} />
      {instrumentsText(instruments, limits.on !== '', format).length > 0 && (
        <p className="soft">{instrumentsText(instruments, limits.on !== '', format).join(' ')}</p>
      )}
      {proposal.best === null && <NoSet proposal={proposal} wanted={wanted} format={format} />}
      {proposal.unsafe.length > 0 && (
        <p className="soft">
          No set is called safe working: {proposal.unsafe.map((each) => unsafeText(each, words)).join('; ')}.
        </p>
      )}
      {shown.map((each) => (
        <SetCard
          key={each.option.key}
          shown={each}
          format={format}
          sockets={wanted.sockets}
          group={group}
          jobNumber={job.number}
          limits={limits}
          mayChoose={mayChoose}
          basis={planBasis}
          readOn={basis.ok ? basis.value.readOn : null}
        />
      ))}
      <StockPlot asked={asked.value} chosen={shown[0]?.option ?? null} format={format} />
      <LostTubes lost={proposal} format={format} />
    </section>
  )
}

function asksText({ demand, designation, tooHotNow }: GroupDemand, set: ReadingSet | null, words: Words): string {
  const { count, plateToCathodeVoltage, screenVoltage, idlePlateDissipation } = demand
  const facts = [
    `${count} × ${designation}`,
    plateToCathodeVoltage !== null && `${words.plate} to cathode ${voltsText(plateToCathodeVoltage)}`,
    screenVoltage !== null && `screen to cathode ${voltsText(screenVoltage)}`,
    idlePlateDissipation !== null &&
      `${wattsText(idlePlateDissipation)} each ${tooHotNow ? 'once set right' : 'at idle'}`,
    set && plateToCathodeVoltage !== null && `as read ${set.phase} the work`,
  ]
  return facts.filter(Boolean).join(' · ')
}

/** Which figures are compared, and how they weigh. */
function BasisLine({ basis, arrangement, words }: { basis: Basis; arrangement: SetArrangement; words: Words }) {
  const at = basis.ok
    ? `Compared by the idle predicted in this amplifier, as read on ${formatDay(basis.value.readOn, words.locale)}.`
    : `Compared at the test point: ${basis.fault}`
  return (
    <p className="soft">
      {at} Weighed as: {arrangementName(arrangement, words)}.
    </p>
  )
}

function NoSet({ proposal, wanted, format }: { proposal: Proposal; wanted: GroupDemand; format: MatchingFormat }) {
  return (
    <div>
      <p>{capital(proposalText(proposal, wanted.demand.count, format))}</p>
      <ul>
        {proposal.relax.map((relaxation) => (
          <li key={relaxation.limit}>{relaxationText(relaxation, format)}</li>
        ))}
      </ul>
    </div>
  )
}
