/** What the circuit of the last round tells beside its readings: what if, effects, restated, side checks. */
import { ComputedTag } from '@/app/_components/circuit/computed-tag'
import { EffectsTable } from '@/app/_components/circuit/effects-table'
import { RestatedTable } from '@/app/_components/circuit/restated-table'
import { SideChecksTable } from '@/app/_components/circuit/side-checks-table'
import styles from '@/app/_components/what-if/what-if.module.css'
import { WhatIfPanel } from '@/app/_components/what-if/what-if-panel'
import { whatIfTyped } from '@/app/_components/what-if/what-if-typed'
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { outputGroups } from '@/lib/domain/bench/bench-result'
import { type AmpCircuit, ampCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { socketList } from '@/lib/domain/circuit/circuit-text'
import { sideChecks } from '@/lib/domain/circuit/side/side-checks'
import { usualMainsHertz } from '@/lib/domain/circuit/side/side-given'
import { groupLoad } from '@/lib/domain/plot/group-load'
import type { Shop } from '@/lib/domain/shop/shop'
import { type Words, wordsFor } from '@/lib/domain/words'
import { type KnownCircuit, marksToPropose, stockedAnswers } from './known-circuit'

type Props = {
  readonly known: KnownCircuit
  /** As it is now: tubes may have been changed since the readings. */
  readonly sheetNow: AmpSheet
  readonly shop: Shop
  /** Path of the page. */
  readonly action: string
  readonly query: Readonly<Record<string, string | string[] | undefined>>
  readonly now: Date
}

export async function CircuitPanels({ known, sheetNow, shop, action, query, now }: Props) {
  const words = wordsFor(shop.words)
  const groups = outputGroups(known.sheet)
  const group = groups.find((name) => name === query.group) ?? groups[0]
  if (group === undefined) return null
  const made = groups.map((name) => ampCircuit({ ...known, group: name }))
  const circuits = made.flatMap((one) => (one.ok ? [one.value] : []))
  const asked = made[groups.indexOf(group)]
  const typed = whatIfTyped(Object.entries(query))
  const stocked = await stockedAnswers(typed, shop, now)
  const marks = asked?.ok ? await marksToPropose(asked.value, now) : []
  return (
    <>
      {asked && (
        <WhatIfPanel
          {...{ action, groups, group, typed, stocked, marks, shop }}
          circuit={asked}
          load={groupLoad(known.sheet, group)}
        >
          <ChangedSince known={known} sheetNow={sheetNow} words={words} />
        </WhatIfPanel>
      )}
      <GroupFolds circuits={circuits} words={words} />
      <SideFold known={known} circuits={circuits} words={words} />
    </>
  )
}

type ChangedProps = Pick<Props, 'known' | 'sheetNow'> & { readonly words: Words }

function ChangedSince({ known, sheetNow, words }: ChangedProps) {
  const sits = new Map(sheetNow.sockets.map(({ id, typeFitted, markFitted }) => [id, `${typeFitted} ${markFitted}`]))
  const changed = known.sheet.sockets.filter(
    ({ id, role, typeFitted, markFitted }) => role === 'output' && sits.get(id) !== `${typeFitted} ${markFitted}`,
  )
  if (changed.length === 0) return null
  return (
    <p className="form-message">
      Another {words.tube} has gone into {socketList(changed.map(({ position }) => position))} since these readings: all
      that is computed here is of the {words.tubes} that were read. Read again to go on from those that are in it.
    </p>
  )
}

type FoldProps = { readonly title: string; readonly computed?: boolean; readonly children: React.ReactNode }

function Fold({ title, computed = false, children }: FoldProps) {
  return (
    <details className={`panel ${styles.fold}`}>
      <summary>
        <h2>{title}</h2>
        {computed && <ComputedTag />}
      </summary>
      {children}
    </details>
  )
}

/** Where there are several groups each is named. */
function GroupFolds({ circuits, words }: { circuits: readonly AmpCircuit[]; words: Words }) {
  if (circuits.length === 0) return null
  const named = (group: string) => circuits.length > 1 && <h3>Group “{group}”</h3>
  return (
    <>
      <Fold title={`Effects: ${words.mains} up and down, a ${words.tube} pulled, other rectifiers`} computed>
        {circuits.map((circuit) => (
          <div key={circuit.group}>
            {named(circuit.group)}
            <EffectsTable circuit={circuit} words={words} />
          </div>
        ))}
        <p className="soft small">The whole stage solved anew for each. Bands hold 95 % of such {words.tubes}.</p>
      </Fold>
      <Fold title={`The readings at marked ${words.mains} voltage`} computed>
        {circuits.map((circuit) => (
          <div key={circuit.group}>
            {named(circuit.group)}
            <RestatedTable circuit={circuit} words={words} />
          </div>
        ))}
        <p className="soft small">
          For laying rounds of different days side by side. Every supply, that of the grids too, is taken to follow the{' '}
          {words.mains} in proportion.
        </p>
      </Fold>
    </>
  )
}

type SideProps = { readonly known: KnownCircuit; readonly circuits: readonly AmpCircuit[]; readonly words: Words }

function SideFold({ known, circuits, words }: SideProps) {
  const mainsHertz = usualMainsHertz(known.sheet.amp.mainsVolts)
  const checks = sideChecks({ ...known, circuits, mainsHertz })
  if (checks.length === 0) return null
  const over = checks.filter(({ verdict }) => verdict === 'over').length
  return (
    <Fold title={over === 0 ? 'Side checks' : `Side checks: ${over} over ${over === 1 ? 'its limit' : 'their limits'}`}>
      <SideChecksTable checks={checks} words={words} />
      <p className="soft small">
        Textbook formulas on what was read and noted, the {words.mains} taken at {mainsHertz} Hz. A computed discharge
        proves nothing: the meter does.
      </p>
    </Fold>
  )
}
