/** What any bench asks of a stage: mains up and down, a tube pulled, other rectifiers. One row a change, one column a socket, and below it what to mind. */
import { VerdictTag } from '@/app/_components/bench/verdict-tag'
import { verdictWord } from '@/lib/domain/bias/bias-text'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { WhatIfCaution } from '@/lib/domain/circuit/change/cautions/what-if-caution'
import { whatIfCautionText } from '@/lib/domain/circuit/change/cautions/what-if-caution-text'
import type { SocketIdle } from '@/lib/domain/circuit/change/socket-idle'
import { type Effect, standardEffects } from '@/lib/domain/circuit/change/standard-effects'
import type { WhatIf } from '@/lib/domain/circuit/change/what-if'
import { whatIfFaultText } from '@/lib/domain/circuit/circuit-text'
import { capital, type Words } from '@/lib/domain/words'
import { bandEnds, MILLIAMPS, PERCENT } from './band-figure'
import { groupedSentences } from './grouped-sentences'

function nameOf(effect: Effect, { mains }: Words): string {
  switch (effect.kind) {
    case 'mains-high':
      return `${capital(mains)} ${effect.percent} % above the mark`
    case 'mains-low':
      return `${capital(mains)} ${effect.percent} % below the mark`
    case 'pulled':
      return `${effect.socket} pulled`
    case 'rectifier':
      return effect.designation === '' ? 'Rectifier: silicon' : `Rectifier: ${effect.designation}`
  }
}

function IdleCell({ idle }: { idle: SocketIdle | null }) {
  if (idle === null) return <td className="soft">pulled</td>
  const { platePercent, verdict, plateAmps } = idle
  return (
    <td>
      <VerdictTag verdict={verdict.verdict} word={verdictWord(verdict.verdict)} />
      <br />
      <span className="nowrap">
        {platePercent && `${Math.round(platePercent.value)} %, `}
        {(1000 * plateAmps.value).toFixed(1)} mA
      </span>
      <br />
      <span className="soft small nowrap">
        {platePercent ? `${bandEnds(platePercent, PERCENT)} %` : `${bandEnds(plateAmps, MILLIAMPS)} mA`}
      </span>
    </td>
  )
}

/** The bands say these already, or the panel above does. */
const LEFT_OUT: ReadonlySet<WhatIfCaution['code']> = new Set([
  'computed-not-read',
  'extrapolated',
  'cutoff-not-known',
  'curves-stand-in',
  'records-disagree',
])

const ownCautions = ({ cautions }: WhatIf, words: Words): string[] =>
  groupedSentences(
    cautions
      .filter(({ code }) => !LEFT_OUT.has(code))
      .map((caution) => ({
        sentence: whatIfCautionText(caution, words),
        socket: 'socket' in caution ? caution.socket : '',
      })),
  )

type RowsProps = {
  readonly effect: Effect
  readonly sockets: number
  readonly common: readonly string[]
  readonly words: Words
}

function EffectRows({ effect, sockets, common, words }: RowsProps) {
  const { result } = effect
  const name = <th scope="row">{nameOf(effect, words)}</th>
  if (!result.ok)
    return (
      <tbody>
        <tr>
          {name}
          <td colSpan={sockets + 1}>{whatIfFaultText(result.fault, words)}</td>
        </tr>
      </tbody>
    )
  const own = ownCautions(result.value, words).filter((sentence) => !common.includes(sentence))
  return (
    <tbody>
      <tr>
        {name}
        <td className="num">{result.value.reservoirVolts.changed.toFixed(0)} V</td>
        {result.value.sockets.map(({ position, changed }) => (
          <IdleCell key={position} idle={changed} />
        ))}
      </tr>
      {own.length > 0 && (
        <tr>
          <td />
          <td colSpan={sockets + 1} className="small">
            {own.join(' ')}
          </td>
        </tr>
      )}
    </tbody>
  )
}

/** Sentences that every one of them has. */
function commonTo(effects: readonly Effect[], words: Words): string[] {
  const all = effects.flatMap(({ result }) => (result.ok ? [ownCautions(result.value, words)] : []))
  return (all[0] ?? []).filter((sentence) => all.length > 1 && all.every((one) => one.includes(sentence)))
}

export function EffectsTable({ circuit, words }: { circuit: AmpCircuit; words: Words }) {
  const effects = standardEffects(circuit)
  const common = commonTo(effects, words)
  const { sockets } = circuit
  return (
    <>
      <div className="table-scroll">
        <table>
          <thead>
            <tr>
              <th>Change</th>
              <th className="num">{words.supply}</th>
              {sockets.map(({ position }) => (
                <th key={position}>{position}</th>
              ))}
            </tr>
          </thead>
          {effects.map((effect) => (
            <EffectRows
              key={nameOf(effect, words)}
              effect={effect}
              sockets={sockets.length}
              common={common}
              words={words}
            />
          ))}
        </table>
      </div>
      {common.map((sentence) => (
        <p key={sentence} className="small">
          {sentence}
        </p>
      ))}
    </>
  )
}
