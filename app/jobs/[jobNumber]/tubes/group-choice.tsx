/** One output group: what it asks for, the sets that answer, and why the others lost. */

import { demandFaultText } from '@/lib/domain/bench/demand-fault-text'
import type { GroupDemand } from '@/lib/domain/bench/group-demand'
import type { ReadingSet } from '@/lib/domain/bench/reading-set'
import { voltsText, wattsText } from '@/lib/domain/bias/bias-figures'
import type { Job } from '@/lib/domain/job/job'
import {
  type MatchingFormat,
  proposalCautionText,
  proposalText,
  relaxationText,
} from '@/lib/domain/matching/matching-text'
import type { Proposal } from '@/lib/domain/matching/proposal'
import { formatMoney } from '@/lib/domain/money'
import type { Quote } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import { capital, type Words, wordsFor } from '@/lib/domain/words'
import type { LatestBench } from '../latest-bench'
import { ChosenSet } from './chosen-set'
import { proposeForGroup, shownSets } from './group-proposal'
import type { Limits } from './limits-form'
import { LostTubes } from './lost-tubes'
import { SetCard } from './set-card'

type Props = {
  readonly group: string
  readonly bench: LatestBench
  readonly job: Job
  readonly shop: Shop
  readonly limits: Limits
  readonly quote: Quote | null
}

export async function GroupChoice({ group, bench, job, shop, limits, quote }: Props) {
  const words = wordsFor(shop.words)
  const asked = await proposeForGroup({ group, bench, job, shop, limits })
  if (!asked.ok)
    return (
      <section className="panel">
        <h2>Group “{group}”</h2>
        <p>{demandFaultText(asked.fault, words)}</p>
      </section>
    )
  const { wanted, proposal } = asked.value
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
      {proposal.closest === null && <NoSet proposal={proposal} wanted={wanted} format={format} />}
      {shownSets(proposal).map((option, index) => (
        <SetCard
          key={option.key}
          title={wanted.demand.count === 1 ? loneTitle(index) : titleOf(proposal, index, words)}
          option={option}
          format={format}
          sockets={wanted.sockets}
          group={group}
          jobNumber={job.number}
          limits={limits}
        />
      ))}
      <LostTubes excluded={proposal.excluded} format={format} />
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

/** One alone is as close to itself as any other: the price comes first. */
const loneTitle = (index: number): string => (index === 0 ? 'Least price' : `Another, ${index}`)

function titleOf({ closest, leastPrice }: Proposal, index: number, words: Words): string {
  const apart = leastPrice !== null && leastPrice.key !== closest?.key
  if (index === 0 && closest?.match === 'outside') return 'Closest set there is, but no match'
  if (index === 0) return leastPrice && !apart ? 'Closest match, and the least price that matches' : 'Closest match'
  if (index === 1 && apart) return 'Least price that matches'
  return `Next best of other ${words.tubes}, ${index - (apart ? 1 : 0)}`
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
