/**
 * Copies the sheet of an amplifier of the same make and model onto an empty
 * one. Types, values and supplies come along; the marks of the tubes do not, since those
 * are other tubes. The history says where the values came from: they are this
 * model's until somebody has measured this amplifier.
 */
import { ampTitle, isSameModel } from '@/lib/domain/amp/amp'
import { copiedSockets } from '@/lib/domain/amp/copied-sockets'
import { sheetShown } from '@/lib/domain/amp/sheet-shown'
import { supplyShown } from '@/lib/domain/amp/supply-shown'
import { type Change, changesBetween } from '@/lib/domain/history/changes'
import type { Result } from '@/lib/domain/result'
import { wordsFor } from '@/lib/domain/words'
import { findAmpSheet, saveOutputClass, saveSheet } from '@/lib/store/amp'
import { findSupply, writeSupply } from '@/lib/store/amp-supply'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { shopOf } from '@/lib/workflow/stock/add-tube-test'

export type SheetToCopy = { readonly ampId: string; readonly version: number; readonly fromAmpId: string }

export function copyAmpSheet(step: Step, input: SheetToCopy): Promise<Result<null, StepFault>> {
  return refusing(() => inTransaction((tx) => copy(tx, step, input)))
}

async function copy(tx: Tx, { actor, now }: Step, { ampId, version, fromAmpId }: SheetToCopy): Promise<null> {
  const onto = await findAmpSheet(ampId, tx)
  const from = await findAmpSheet(fromAmpId, tx)
  if (!onto) return refuse({ code: 'not-found', what: 'This amplifier' })
  if (!from || from.sockets.length === 0) return refuse({ code: 'not-found', what: 'The sheet to copy' })
  if (onto.sockets.length > 0) return refuse({ code: 'sheet-not-empty', sockets: onto.sockets.length })
  if (!isSameModel(onto.amp, from.amp))
    return refuse({ code: 'other-model', model: ampTitle(from.amp), wanted: ampTitle(onto.amp) })
  const sockets = copiedSockets(from.sockets)
  const rows = sockets.map((details) => ({ id: null, details }))
  if (!(await saveSheet(tx, ampId, version, rows))) return refuse(await stale(tx, 'amp', ampId, version))
  await saveOutputClass(tx, ampId, from.amp.outputClass)
  const supply = await copySupply(tx, ampId, fromAmpId)
  const changes = [
    ...changesBetween(sheetShown(onto.amp.outputClass, []), sheetShown(from.amp.outputClass, sockets)),
    ...supply,
  ]
  const did = `Sheet copied from ${ampTitle(from.amp)}`
  const note = { at: now, person: actor.name, subject: 'amp', subjectId: ampId } as const
  await writeHistory(tx, { ...note, did, changes, version: version + 1 })
  return null
}

/** Only where nothing was written down: what is known of the very amplifier stays. */
async function copySupply(tx: Tx, ampId: string, fromAmpId: string): Promise<Change[]> {
  const [own, theirs] = [await findSupply(ampId, tx), await findSupply(fromAmpId, tx)]
  const words = wordsFor((await shopOf(tx)).words)
  const nothing = (facts: typeof own) => [...supplyShown(facts, words).values()].every((text) => text === '')
  if (!nothing(own) || nothing(theirs)) return []
  await writeSupply(tx, ampId, theirs)
  return changesBetween(supplyShown(own, words), supplyShown(theirs, words))
}
