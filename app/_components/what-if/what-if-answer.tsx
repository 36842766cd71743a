/**
 * The answer of the what-if panel: drawn on the server, and in the browser while one types.
 * Pure of both: no hooks, no store.
 */
import type { ReactNode } from 'react'
import { groupedSentences } from '@/app/_components/circuit/grouped-sentences'
import { idleReason } from '@/app/_components/circuit/idle-reason'
import { SentenceList } from '@/app/_components/circuit/sentence-list'
import { SupplyFigures } from '@/app/_components/circuit/supply-figures'
import { TrimList } from '@/app/_components/circuit/trim-list'
import { PlateCurves } from '@/app/_components/plot/plate-curves'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { assumptionText } from '@/lib/domain/circuit/amp/assumption-text'
import { whatIfCautionText } from '@/lib/domain/circuit/change/cautions/what-if-caution-text'
import { type Trim, trimsFor } from '@/lib/domain/circuit/change/trims'
import { type WhatIf, whatIf } from '@/lib/domain/circuit/change/what-if'
import { whatIfFaultText } from '@/lib/domain/circuit/circuit-text'
import { changePlots } from '@/lib/domain/plot/change-plots'
import type { PlotLoad } from '@/lib/domain/plot/load-path'
import { plotFaultText } from '@/lib/domain/plot/plot-text'
import { capital, type Words } from '@/lib/domain/words'
import { askedChange, boxOfFault, type StockedAnswers } from './asked-change'
import { changeText } from './change-text'
import { ThenTable } from './then-table'
import styles from './what-if.module.css'
import type { WhatIfTyped } from './what-if-typed'

export type WhatIfQuestion = {
  readonly circuit: AmpCircuit
  readonly typed: WhatIfTyped
  readonly stocked: StockedAnswers
  /** What the group works into; null: not on the sheet. */
  readonly load: PlotLoad | null
  readonly words: Words
}

export type WhatIfAnswer = {
  /** A sentence by box. */
  readonly faults: Readonly<Record<string, string>>
  /** A mark has to be looked up in the stock book first. */
  readonly waiting: boolean
  readonly view: ReactNode
}

export function whatIfAnswer({ circuit, typed, stocked, load, words }: WhatIfQuestion): WhatIfAnswer {
  const { change, faults, waiting } = askedChange(circuit, typed, stocked, words)
  if (Object.keys(faults).length > 0) return { faults, waiting, view: <Mend /> }
  const found = whatIf(circuit, change)
  if (!found.ok) {
    const sentence = whatIfFaultText(found.fault, words)
    const box = boxOfFault(found.fault)
    if (box && typed[box] !== undefined) return { faults: { [box]: sentence }, waiting, view: <Mend /> }
    return { faults, waiting, view: <p className="caution">{sentence}</p> }
  }
  const trims = trimsFor(circuit, change)
  const view = (
    <Answer
      found={found.value}
      trims={trims.ok ? trims.value : []}
      told={changeText(change, circuit, words)}
      circuit={circuit}
      load={load}
      words={words}
    />
  )
  return { faults, waiting, view }
}

const Mend = () => <p className="form-message">A box above needs another look; until then there is no answer.</p>

type AnswerProps = {
  readonly found: WhatIf
  readonly trims: readonly Trim[]
  /** '': nothing is changed. */
  readonly told: string
  readonly circuit: AmpCircuit
  readonly load: PlotLoad | null
  readonly words: Words
}

function Answer({ found, trims, told, circuit, load, words }: AnswerProps) {
  const changed = told !== ''
  return (
    <div className={styles.answer}>
      <p>
        {changed ? (
          <strong>{told}</strong>
        ) : (
          'Nothing is changed yet: this is the stage as it was read. Type in any of the boxes.'
        )}
      </p>
      <ThenTable sockets={found.sockets} changed={changed} words={words} />
      <Reasons found={found} words={words} />
      {changed && <ThenCurves found={found} circuit={circuit} load={load} words={words} />}
      <div className={styles.beside}>
        <SupplyFigures found={found} changed={changed} words={words} />
        <section>
          <h3>To the middle of the window</h3>
          <TrimList trims={trims} circuit={circuit} words={words} />
        </section>
      </div>
      <SentenceList
        title="Mind"
        sentences={groupedSentences(
          found.cautions.map((caution) => ({
            sentence: whatIfCautionText(caution, words),
            socket: 'socket' in caution ? caution.socket : 'part' in caution ? caution.part : '',
          })),
        )}
      />
      <SentenceList
        title="What this rests on beside the readings"
        sentences={found.assumptions.map((assumption) => assumptionText(assumption, words))}
        soft
      />
    </div>
  )
}

/** Of the state asked for; where nothing is changed, of the present one. Read aloud when it changes: the rest is too long for that. */
function Reasons({ found, words }: Pick<AnswerProps, 'found' | 'words'>) {
  return (
    <ul className={styles.reasons} aria-live="polite">
      {found.sockets.map(({ position, changed }) => (
        <li key={position}>
          <strong>{position}.</strong> {changed ? idleReason(changed, words) : 'Pulled.'}
        </li>
      ))}
    </ul>
  )
}

/** Folded away, as those of the readings are. */
function ThenCurves({ found, circuit, load, words }: Pick<AnswerProps, 'found' | 'circuit' | 'load' | 'words'>) {
  return changePlots(found, load, circuit).map(({ designation, plot }) =>
    plot.ok ? (
      <details key={designation} className={styles.marks}>
        <summary>
          {capital(words.plate)} curves of the {designation} with these points
        </summary>
        <PlateCurves sheet={plot.value} words={words} />
      </details>
    ) : (
      <p key={designation} className="soft">
        {plotFaultText(plot.fault, words)}
      </p>
    ),
  )
}
