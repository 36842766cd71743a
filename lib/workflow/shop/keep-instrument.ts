/** Writes an instrument down, corrects it, retires it. */
import { changesBetween, shown } from '@/lib/domain/history/changes'
import { mayDo } from '@/lib/domain/person/role'
import { fail, type Result } from '@/lib/domain/result'
import type { InstrumentDetails } from '@/lib/domain/shop/instrument'
import { instrumentShown } from '@/lib/domain/shop/instrument-shown'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { createInstrument, findInstrument, hasReadings, saveInstrument } from '@/lib/store/instrument'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export type InstrumentInput = {
  /** Null for a new one. */
  readonly id: string | null
  readonly version: number
  readonly details: InstrumentDetails
}

/** Whoever measures with them, and whoever keeps the shop. */
export const mayKeepInstruments = ({ actor }: Pick<Step, 'actor'>): boolean =>
  mayDo(actor, 'bench-work') || mayDo(actor, 'keep-shop')

export async function keepInstrument(step: Step, input: InstrumentInput): Promise<Result<string, StepFault>> {
  if (!mayKeepInstruments(step)) return fail({ code: 'not-your-instruments' })
  const { id, ...rest } = input
  return refusing(() =>
    inTransaction((tx) => (id === null ? add(tx, step, rest.details) : correct(tx, step, id, rest))),
  )
}

async function add(tx: Tx, { actor, now }: Step, details: InstrumentDetails): Promise<string> {
  const id = await createInstrument(tx, details)
  const changes = changesBetween(shown([]), instrumentShown(details))
  const did = 'Instrument written down'
  await writeHistory(tx, {
    at: now,
    person: actor.name,
    subject: 'instrument',
    subjectId: id,
    did,
    changes,
    version: 1,
  })
  return id
}

async function correct(
  tx: Tx,
  { actor, now }: Step,
  id: string,
  { version, details }: Omit<InstrumentInput, 'id'>,
): Promise<string> {
  const before = await findInstrument(id, tx)
  if (!before) return refuse({ code: 'not-found', what: 'This instrument' })
  if (before.kind === 'meter' && details.kind !== 'meter' && (await hasReadings(tx, id)))
    return refuse({ code: 'meter-has-readings', name: before.name })
  if (!(await saveInstrument(tx, id, version, details))) return refuse(await stale(tx, 'instrument', id, version))
  const changes = changesBetween(instrumentShown(before), instrumentShown(details))
  const did = before.active && !details.active ? 'Instrument retired' : 'Instrument corrected'
  const note = { at: now, person: actor.name, subject: 'instrument', subjectId: id, did, changes } as const
  await writeHistory(tx, { ...note, version: version + 1 })
  return id
}
