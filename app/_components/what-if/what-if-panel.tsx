/** "What if" for one output group: the boxes, and the answer as the address asks for it. */
import Link from 'next/link'
import { ComputedTag } from '@/app/_components/circuit/computed-tag'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { CircuitFault } from '@/lib/domain/circuit/amp/circuit-fault'
import { rectifiersFor } from '@/lib/domain/circuit/change/standard-effects'
import { circuitFaultText } from '@/lib/domain/circuit/circuit-text'
import type { PlotLoad } from '@/lib/domain/plot/load-path'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { listDesignationsByRole } from '@/lib/domain/tube/list-designations'
import { type Words, wordsFor } from '@/lib/domain/words'
import type { StockedAnswers } from './asked-change'
import styles from './what-if.module.css'
import { whatIfAnswer } from './what-if-answer'
import type { WhatIfLists } from './what-if-boxes'
import { WhatIfForm } from './what-if-form'
import { SILICON, type WhatIfTyped } from './what-if-typed'

export type WhatIfPanelProps = {
  /** Path of the page that shows it. */
  readonly action: string
  readonly groups: readonly string[]
  readonly group: string
  readonly circuit: Result<AmpCircuit, CircuitFault>
  readonly typed: WhatIfTyped
  readonly stocked: StockedAnswers
  readonly marks: WhatIfLists['marks']
  readonly load: PlotLoad | null
  readonly shop: Shop
  /** What has to be said before: that tubes were changed since. */
  readonly children?: React.ReactNode
}

export function WhatIfPanel({ groups, circuit, children, ...asked }: WhatIfPanelProps) {
  const { action, group, shop } = asked
  const words = wordsFor(shop.words)
  return (
    <section className={`panel stack ${styles.panel}`} id="what-if" aria-labelledby="what-if-head">
      <div className="panel-head">
        <h2 id="what-if-head">What if …</h2>
        <ComputedTag />
      </div>
      {groups.length > 1 && <Groups action={action} groups={groups} group={group} />}
      {children}
      {circuit.ok ? (
        <Asked {...asked} circuit={circuit.value} words={words} />
      ) : (
        <p className="form-message">{circuitFaultText(circuit.fault, words)}</p>
      )}
    </section>
  )
}

type AskedProps = Omit<WhatIfPanelProps, 'groups' | 'circuit' | 'children'> & {
  readonly circuit: AmpCircuit
  readonly words: Words
}

function Asked({ action, group, circuit, typed, stocked, marks, load, shop, words }: AskedProps) {
  const { faults, view } = whatIfAnswer({ circuit, typed, stocked, load, words })
  return (
    <>
      <p>
        The stage of the last readings, solved again with something changed. It proposes what to try; what came of it,
        only the meter says. <strong>{words.supply} is lethal</strong>, after the plug is out as well: discharge, prove
        it, then change parts.
      </p>
      <WhatIfForm
        key={group}
        {...{ action, group, circuit, typed, faults, stocked, load }}
        lists={listsOf(circuit, marks, shop)}
        wordSet={shop.words}
      >
        {view}
      </WhatIfForm>
    </>
  )
}

function Groups({ action, groups, group }: Pick<WhatIfPanelProps, 'action' | 'groups' | 'group'>) {
  return (
    <nav className={styles.groups} aria-label="Output groups">
      {groups.map((name) => (
        <Link
          key={name}
          className={name === group ? 'button' : 'button quiet'}
          aria-current={name === group ? 'true' : undefined}
          href={`${action}?${new URLSearchParams({ group: name })}#what-if`}
          scroll={false}
        >
          {name === '' ? 'no name' : name}
        </Link>
      ))}
    </nav>
  )
}

function listsOf(circuit: AmpCircuit, marks: WhatIfLists['marks'], shop: Shop): WhatIfLists {
  const byRole = listDesignationsByRole(shop)
  const named = (role: string) => byRole.find((group) => group.role === role)?.designations ?? []
  const fitting = rectifiersFor(circuit).map((name) => name || SILICON)
  const others = [...named('rectifier'), SILICON].filter((name) => !fitting.includes(name))
  return {
    types: named('output'),
    rectifiers: [
      ...fitting.map((name) => ({ name, fits: true })),
      ...[...new Set(others)].map((name) => ({ name, fits: false })),
    ],
    marks,
  }
}
