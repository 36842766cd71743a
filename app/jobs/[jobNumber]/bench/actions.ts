'use server'
import { revalidatePath } from 'next/cache'
import { redirect } from 'next/navigation'
import { type FormState, refusedForm } from '@/app/_components/form/form-state'
import { staleForm } from '@/app/_components/form/merge-typed'
import { once } from '@/app/_components/form/once'
import { readForm } from '@/app/_components/form/read-form'
import { methodOf } from '@/lib/domain/bench/reading-of-socket'
import { wordsFor } from '@/lib/domain/words'
import { type GuardedStep, requireStep } from '@/lib/session'
import { findAmpSheet } from '@/lib/store/amp'
import { findReadingSet } from '@/lib/store/reading-set'
import { keepReadings, strikeReadings } from '@/lib/workflow/bench/keep-readings'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { findHead } from '../require-head'
import { readingsSchema, readingsValues } from './readings-schema'

export async function submitReadings(jobNumber: string, before: FormState, form: FormData): Promise<FormState> {
  const guarded = await requireStep()
  return once(guarded.step.actor.id, form, () => writeReadings(guarded, jobNumber, before, form))
}

async function writeReadings({ step, shop }: GuardedStep, jobNumber: string, before: FormState, form: FormData) {
  const words = wordsFor(shop.words)
  const read = readForm(readingsSchema(words), before, form)
  if (!read.ok) return read.state
  const { setId, version, entries, ...conditions } = read.value
  const head = await findHead(jobNumber)
  const sockets = head ? ((await findAmpSheet(head.amp.id))?.sockets ?? []) : []
  const written = entries.map((entry) => {
    const socket = sockets.find(({ id }) => id === entry.socketId)
    return { ...entry, method: entry.method || (socket ? methodOf(entry, socket) : '') }
  })
  const kept = await keepReadings(step, { jobNumber, setId: setId || null, version, conditions, entries: written })
  if (kept.ok) {
    revalidatePath(`/jobs/${jobNumber}`, 'layout')
    redirect(`/jobs/${jobNumber}/bench`)
  }
  const sentence = stepFaultText(kept.fault, shop)
  if (kept.fault.code !== 'stale') return refusedForm(before, read.values, sentence)
  const start = { phase: conditions.phase, instrumentId: '', wallVolts: '' }
  // In the order of the form: boxes are compared by their place in it.
  const typed = entries.map(({ socketId }) => ({ id: socketId }))
  return staleForm(before, read.values, {
    current: readingsValues(typed, await findReadingSet(setId), start, words),
    sentence,
  })
}

export async function strikeRound(jobNumber: string, setId: string): Promise<void> {
  const { step } = await requireStep()
  await strikeReadings(step, jobNumber, setId)
  revalidatePath(`/jobs/${jobNumber}`, 'layout')
  redirect(`/jobs/${jobNumber}/bench`)
}
