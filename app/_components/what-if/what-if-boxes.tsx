/** The boxes of the panel. Each keeps what was typed, and has its own sentence. */
import { useId } from 'react'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { capital, type Words } from '@/lib/domain/words'
import styles from './what-if.module.css'
import { markBox, SILICON, type WhatIfTyped } from './what-if-typed'

export type WhatIfLists = {
  /** Output types known, for the list beside the box. */
  readonly types: readonly string[]
  /** Of the same base and heater first. */
  readonly rectifiers: readonly { readonly name: string; readonly fits: boolean }[]
  /** Free tubes of the types fitted, by mark. */
  readonly marks: readonly { readonly mark: string; readonly text: string }[]
}

type BoxesProps = {
  readonly circuit: AmpCircuit
  readonly typed: WhatIfTyped
  readonly faults: Readonly<Record<string, string>>
  readonly lists: WhatIfLists
  readonly words: Words
}

type FrameProps = {
  readonly name: string
  readonly label: string
  readonly hint?: string
  readonly fault: string | undefined
  readonly children: (aria: { id: string; 'aria-invalid'?: true; 'aria-describedby'?: string }) => React.ReactNode
}

function Frame({ label, hint, fault, children }: FrameProps) {
  const id = useId()
  const notes = [hint && `${id}-hint`, fault && `${id}-fault`].filter(Boolean).join(' ')
  return (
    <div className="field" data-fault={fault ? '' : undefined}>
      <label htmlFor={id}>{label}</label>
      {children({ id, ...(fault && { 'aria-invalid': true }), ...(notes && { 'aria-describedby': notes }) })}
      {hint && (
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {fault && (
        <p className="field-fault" id={`${id}-fault`} role="alert">
          {fault}
        </p>
      )}
    </div>
  )
}

type BoxProps = Pick<BoxesProps, 'typed' | 'faults'> & {
  readonly name: string
  readonly label: string
  readonly hint?: string
  readonly unit?: string
  readonly list?: string
}

function Box({ typed, faults, name, label, hint, unit, list }: BoxProps) {
  return (
    <Frame name={name} label={label} hint={hint} fault={faults[name]}>
      {(aria) => (
        <div className="field-box">
          <input
            {...aria}
            name={name}
            type="text"
            inputMode={unit ? 'decimal' : undefined}
            autoComplete="off"
            maxLength={40}
            list={list}
            defaultValue={typed[name] ?? ''}
          />
          {unit && <span className="field-unit">{unit}</span>}
        </div>
      )}
    </Frame>
  )
}

const signed = (volts: number): string => `${volts.toFixed(1).replace('-', '\u2212')} V`

/** What sets the idle: a grid supply, or the cathode resistor. */
function IdleBox({ circuit, typed, faults, words }: Omit<BoxesProps, 'lists'>) {
  const { stage, markedMainsVolts } = circuit
  const [supply] = stage.gridSupplies
  const [resistor] = stage.biasResistors
  const box = { typed, faults }
  return (
    <>
      {supply && (
        <Box
          {...box}
          name="grid"
          label="Grid supply"
          unit="V"
          hint={`Now ${signed(supply.voltage)}, both at ${markedMainsVolts} V ${words.mains}.`}
        />
      )}
      {!supply && resistor && (
        <Box
          {...box}
          name="cathode"
          label="Cathode resistor"
          unit="Ω"
          hint={`Now ${stage.biasResistors.map(({ resistance }) => Number(resistance.toPrecision(4))).join(', ')} Ω.`}
        />
      )}
    </>
  )
}

function RectifierBox({ circuit, typed, faults, lists }: BoxesProps) {
  const now = circuit.rectifier.designation || SILICON
  const option = (name: string) => (
    <option key={name} value={name}>
      {name}
    </option>
  )
  const others = lists.rectifiers.filter(({ name }) => name !== now)
  const [fitting, rest] = [others.filter(({ fits }) => fits), others.filter(({ fits }) => !fits)]
  return (
    <Frame name="rectifier" label="Rectifier" fault={faults.rectifier}>
      {(aria) => (
        <select {...aria} name="rectifier" defaultValue={typed.rectifier ?? ''}>
          <option value="">as it is: {now}</option>
          {fitting.length > 0 && <optgroup label="Fits the socket">{fitting.map(({ name }) => option(name))}</optgroup>}
          {rest.length > 0 && <optgroup label="Other base or heater">{rest.map(({ name }) => option(name))}</optgroup>}
        </select>
      )}
    </Frame>
  )
}

function PulledBox({ circuit, typed, faults, words }: BoxesProps) {
  if (circuit.sockets.length < 2) return null
  return (
    <Frame name="pulled" label={`One ${words.tube} pulled`} fault={faults.pulled}>
      {(aria) => (
        <select {...aria} name="pulled" defaultValue={typed.pulled ?? ''}>
          <option value="">none</option>
          {circuit.sockets.map(({ position }) => (
            <option key={position} value={position}>
              {position}
            </option>
          ))}
        </select>
      )}
    </Frame>
  )
}

function MarkBoxes({ circuit, typed, faults, lists, words }: BoxesProps) {
  const id = useId()
  const any = circuit.sockets.some(({ position }) => typed[markBox(position)] !== undefined)
  return (
    <details className={styles.marks} open={any}>
      <summary>Particular {words.tubes} from stock, by their marks</summary>
      <div className="fields">
        {circuit.sockets.map(({ position }) => (
          <Box
            key={position}
            typed={typed}
            faults={faults}
            name={markBox(position)}
            label={`Mark in ${position}`}
            list={id}
          />
        ))}
      </div>
      <datalist id={id}>
        {lists.marks.map(({ mark, text }) => (
          <option key={mark} value={mark}>
            {text}
          </option>
        ))}
      </datalist>
    </details>
  )
}

export function WhatIfBoxes(props: BoxesProps) {
  const { circuit, typed, faults, lists, words } = props
  const id = useId()
  const now = [...new Set(circuit.sockets.map(({ variant }) => variant.asked))].join(', ')
  const box = { typed, faults }
  return (
    <>
      <div className="fields">
        <Box
          {...box}
          name="type"
          label={`${capital(words.tube)} type`}
          list={id}
          hint={`Now ${now}. An average one, in every socket without a mark.`}
        />
        <IdleBox {...props} />
        <Box
          {...box}
          name="wall"
          label="Wall voltage"
          unit="V"
          hint={`Read at ${circuit.readAtWallVolts} V, marked ${circuit.markedMainsVolts} V.`}
        />
        <RectifierBox {...props} />
        <PulledBox {...props} />
      </div>
      <MarkBoxes {...props} />
      <datalist id={id}>
        {lists.types.map((type) => (
          <option key={type} value={type} />
        ))}
      </datalist>
    </>
  )
}
