/**
 * Keeps the sheet of an amplifier: its sockets in chassis order with the values
 * that readings are computed from. A socket with a past (readings, fitted
 * tubes) stays on the sheet for ever.
 */
import type { AmpSheet, OutputClass } from '@/lib/domain/amp/amp'
import { type LeftOut, settleSheet } from '@/lib/domain/amp/settle-sheet'
import { sheetShown } from '@/lib/domain/amp/sheet-shown'
import type { SocketDetails } from '@/lib/domain/amp/socket'
import { changesBetween } from '@/lib/domain/history/changes'
import type { Result } from '@/lib/domain/result'
import { findAmpSheet, listUsedSockets, saveOutputClass, saveSheet } from '@/lib/store/amp'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

/** Null id: a socket that is new on the sheet. */
export type SheetSocket = SocketDetails & { readonly id: string | null }

export type SheetToKeep = {
  readonly ampId: string
  readonly version: number
  readonly outputClass: OutputClass
  /** In chassis order. */
  readonly sockets: readonly SheetSocket[]
}

export type KeptSheet = {
  readonly version: number
  /** Values that do not belong to the role of their socket and were not kept. */
  readonly leftOut: readonly LeftOut[]
}

export function keepAmpSheet(step: Step, input: SheetToKeep): Promise<Result<KeptSheet, StepFault>> {
  return refusing(() => inTransaction((tx) => keep(tx, step, input)))
}

async function keep(tx: Tx, step: Step, input: SheetToKeep): Promise<KeptSheet> {
  const { ampId, version, outputClass } = input
  const before = await findAmpSheet(ampId, tx)
  if (!before) return refuse({ code: 'not-found', what: 'This amplifier' })
  if (before.amp.version !== version) return refuse(await stale(tx, 'amp', ampId, version))
  await refuseLost(tx, before, input.sockets)
  const settled = settleSheet(outputClass, input.sockets)
  if (!settled.ok) return refuse(settled.fault)
  const { sockets, leftOut } = settled.value
  const rows = sockets.map(({ id, ...details }) => ({ id, details }))
  if (!(await saveSheet(tx, ampId, version, rows))) return refuse(await stale(tx, 'amp', ampId, version))
  await saveOutputClass(tx, ampId, outputClass)
  const changes = changesBetween(sheetShown(before.amp.outputClass, before.sockets), sheetShown(outputClass, sockets))
  const note = { at: step.now, person: step.actor.name, subject: 'amp', subjectId: ampId } as const
  await writeHistory(tx, { ...note, did: 'Sheet saved', changes, version: version + 1 })
  return { version: version + 1, leftOut }
}

/** Refuses a sheet that drops a socket with a past, or names one that is not its own. */
async function refuseLost(tx: Tx, before: AmpSheet, sockets: readonly SheetSocket[]): Promise<void> {
  const kept = new Set(sockets.flatMap(({ id }) => (id === null ? [] : [id])))
  const own = new Set(before.sockets.map(({ id }) => id))
  if ([...kept].some((id) => !own.has(id))) refuse({ code: 'not-found', what: 'A socket of this sheet' })
  const lost = (await listUsedSockets(before.amp.id, tx)).find(({ socketId }) => !kept.has(socketId))
  if (lost) refuse({ code: 'socket-in-use', position: lost.position, readings: lost.readings, fittings: lost.fittings })
}
