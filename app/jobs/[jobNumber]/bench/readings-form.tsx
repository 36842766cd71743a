'use client'
import { useMemo } from 'react'
import { rowsOf } from '@/app/_components/form/edit-rows'
/** Readings in chassis order, by the boxes that this socket's sheet can make something of. */
import {
  FormMessage,
  HiddenField,
  type Option,
  SelectField,
  SubmitButton,
  TextField,
} from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { type ActionForm, type FormAction, useActionForm } from '@/app/_components/form/use-action-form'
import type { Socket } from '@/lib/domain/amp/socket'
import { methodWord, SIGNAL_STATES } from '@/lib/domain/bench/reading-set'
import { capital, type WordSet, wordsFor } from '@/lib/domain/words'
import type { PinHints } from './pin-hints'
import styles from './readings-form.module.css'
import { type ReadingKey, readingBoxes, readingsSchema } from './readings-schema'

type Props = {
  readonly action: FormAction
  readonly values: FormValues
  readonly sockets: readonly Socket[]
  /** By socket id. */
  readonly pins: Readonly<Record<string, PinHints>>
  readonly instruments: readonly Option[]
  readonly wordSet: WordSet
  readonly markedMainsVolts: number
}

const SIGNALS = SIGNAL_STATES.map((state) => ({ value: state, text: state }))

export function ReadingsForm({ action, values, sockets, pins, instruments, wordSet, markedMainsVolts }: Props) {
  const words = wordsFor(wordSet)
  const schema = useMemo(() => readingsSchema(words), [words])
  const form = useActionForm(action, freshForm(values), schema)
  const anyHalf = sockets.some(({ halfPrimaryOhms }) => halfPrimaryOhms !== null)
  return (
    <form {...form.formProps} className="panel stack">
      <FormMessage form={form} />
      {['setId', 'version', 'base', 'phase'].map((name) => (
        <HiddenField key={name} form={form} name={name} />
      ))}
      <fieldset>
        <legend>Conditions</legend>
        <div className="fields">
          <SelectField form={form} name="instrumentId" label="Meter" options={instruments} />
          <TextField
            form={form}
            name="wallVolts"
            label="Wall voltage"
            unit="V"
            numeric
            hint={`The amplifier is marked ${markedMainsVolts} V.`}
          />
          <TextField
            form={form}
            name="warmupMinutes"
            label="Warm-up"
            unit="min"
            numeric
            hint="Ten minutes at least, usually."
          />
          <SelectField form={form} name="signalState" label="Signal" options={SIGNALS} />
          <TextField
            form={form}
            name="resistorTolerancePercent"
            label="Resistor values good to ±"
            unit="%"
            numeric
            hint="Measured: as good as the meter. Marked: their tolerance."
          />
          {anyHalf && (
            <TextField
              form={form}
              name="copperWarmingCelsius"
              label="Copper may have warmed by"
              unit="°C"
              numeric
              hint="Since the half primaries were measured; 0 when measured hot."
            />
          )}
        </div>
        {!anyHalf && <HiddenField form={form} name="copperWarmingCelsius" />}
      </fieldset>
      {rowsOf(form.state.values, 'entries').map(({ socketId = '' }, index) => {
        // Boxes are numbered as the form was opened, and named by the sheet as it is now.
        const socket = sockets.find(({ id }) => id === socketId)
        const common = { form, index, words, pins: pins[socketId] ?? {} }
        return socket && <SocketBoxes key={socketId} socket={socket} {...common} />
      })}
      <TextField form={form} name="note" label="Note" lines={2} />
      <div className="row">
        <SubmitButton form={form}>Save and work out</SubmitButton>
        <span className="soft">
          {capital(words.plate)}, screen, cathode and grid volts are to chassis. Leave a box empty when it was not read.
        </span>
      </div>
    </form>
  )
}

function boxesOf(socket: Socket): readonly ReadingKey[] {
  // A rectifier has no grid, and alternating volts on its plates; its cathode is the supply.
  if (socket.role === 'rectifier') return ['cathodeVolts']
  if (socket.role !== 'output') return ['plateVolts', 'cathodeVolts', 'gridVolts']
  const maybe = (key: ReadingKey, there: boolean): ReadingKey[] => (there ? [key] : [])
  return [
    'plateVolts',
    ...maybe('senseDropVolts', socket.senseOhms !== null),
    ...maybe('halfDropVolts', socket.halfPrimaryOhms !== null),
    'cathodeVolts',
    'screenVolts',
    ...maybe('screenDropVolts', socket.screenOhms !== null),
    'gridVolts',
  ]
}

const part = (key: ReadingKey, socket: Socket): string | undefined => {
  const shared = (ohms: number, by: number) => `${ohms} Ω${by > 1 ? `, shared by ${by}: read once` : ''}`
  if (key === 'senseDropVolts' && socket.senseOhms !== null) return shared(socket.senseOhms, 1)
  if (key === 'halfDropVolts' && socket.halfPrimaryOhms !== null)
    return shared(socket.halfPrimaryOhms, socket.halfSharedBy)
  if (key === 'screenDropVolts' && socket.screenOhms !== null) return shared(socket.screenOhms, 1)
  if (key === 'cathodeVolts' && socket.biasKind === 'cathode-resistor' && socket.cathodeOhms !== null)
    return shared(socket.cathodeOhms, socket.cathodeSharedBy)
  return undefined
}

type Words = ReturnType<typeof wordsFor>

type SocketBoxesProps = {
  readonly form: ActionForm
  readonly socket: Socket
  readonly pins: PinHints
  readonly index: number
  readonly words: Words
}

/** Pin, part and sign, as far as the box has them. */
function hintOf(key: ReadingKey, socket: Socket, pins: PinHints): string | undefined {
  const sign = key === 'gridVolts' && socket.biasKind === 'grid-supplied' ? 'with its minus: −42' : undefined
  const supply = socket.role === 'rectifier' ? 'what it gives, DC' : undefined
  return [pins[key as keyof PinHints], part(key, socket), sign, supply].filter(Boolean).join('; ') || undefined
}

function SocketBoxes({ form, socket, pins, index, words }: SocketBoxesProps) {
  const boxes = new Map(readingBoxes(words).map((box) => [box.key, box]))
  const shown = boxesOf(socket)
  const hidden = [...boxes.keys()].filter((key) => !shown.includes(key))
  const name = (key: string) => `entries.${index}.${key}`
  const methods = shown.flatMap((key): Option[] => {
    if (key === 'senseDropVolts') return [{ value: 'cathode-sense', text: methodWord('cathode-sense') }]
    if (key === 'halfDropVolts') return [{ value: 'half-primary-drop', text: methodWord('half-primary-drop') }]
    return key === 'cathodeVolts' && socket.biasKind === 'cathode-resistor' && socket.cathodeOhms !== null
      ? [{ value: 'cathode-bias', text: methodWord('cathode-bias') }]
      : []
  })
  return (
    <fieldset>
      <legend>
        {socket.position}{' '}
        <span className="soft">
          {[socket.typeFitted || 'type not noted', socket.role.replace('-', ' '), socket.side && `side ${socket.side}`]
            .filter(Boolean)
            .join(' · ')}
        </span>
      </legend>
      <HiddenField form={form} name={name('socketId')} />
      <div className={styles.boxes}>
        {shown.map((key) => {
          const box = boxes.get(key)
          return (
            box && (
              <TextField
                key={key}
                form={form}
                name={name(key)}
                label={box.label}
                unit={box.unit}
                hint={hintOf(key, socket, pins)}
                // The number pad of a tablet may have no minus.
                numeric={key !== 'gridVolts'}
              />
            )
          )
        })}
        {methods.length > 1 && (
          <SelectField
            form={form}
            name={name('method')}
            label="Current from"
            options={methods}
            empty="whichever is filled in"
          />
        )}
      </div>
      {socket.role === 'output' && methods.length === 0 && (
        <p className="field-hint">
          The sheet has no sense, half-primary or cathode resistance here, so no current can be worked out.
        </p>
      )}
      {methods.length <= 1 && <HiddenField form={form} name={name('method')} />}
      {hidden.map((key) => (
        <HiddenField key={key} form={form} name={name(key)} />
      ))}
    </fieldset>
  )
}
