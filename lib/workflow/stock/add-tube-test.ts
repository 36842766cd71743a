/** Writes down a test of a stocked tube; on request the tube becomes a reject by it. */
import { dayInZone, formatDay } from '@/lib/domain/calendar'
import { changesBetween, shown } from '@/lib/domain/history/changes'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { stockType } from '@/lib/domain/stock/stock-type'
import { type TestEntry, testedInstant, testFaults } from '@/lib/domain/stock/test-entry'
import { conditionWord, type Tube } from '@/lib/domain/stock/tube'
import { testShown } from '@/lib/domain/stock/tube-text'
import { wordsFor } from '@/lib/domain/words'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { findShop } from '@/lib/store/shop'
import { addTest, findTube, saveCondition } from '@/lib/store/tube'
import { findCalibration } from '@/lib/store/tube-tester'
import { allowed, refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export async function shopOf(tx: Tx): Promise<Shop> {
  const shop = await findShop(tx)
  if (!shop) throw new Error('A step was asked for before the shop was opened')
  return shop
}

export function addTubeTest(
  step: Step,
  input: { readonly tubeId: string; readonly test: TestEntry; readonly reject: boolean },
): Promise<Result<string, StepFault>> {
  const { tubeId, test, reject } = input
  return refusing(() =>
    inTransaction(async (tx) => {
      const tube = await findTube(tubeId, tx)
      if (!tube) return refuse({ code: 'not-found', what: 'This piece' })
      await recordTest(tx, step, await shopOf(tx), tube, test)
      if (reject && tube.condition !== 'reject') await rejectTube(tx, step, tube)
      return tubeId
    }),
  )
}

/** Inside a larger step too, such as taking a tube in with its first test. */
export async function recordTest(
  tx: Tx,
  step: Step,
  shop: Shop,
  tube: Pick<Tube, 'id' | 'designation'>,
  entry: TestEntry,
  sheetId?: string,
): Promise<void> {
  const duty = allowed(step, 'bench-work')
  if (!duty.ok) return refuse(duty.fault)
  const { actor, now } = step
  const faults = testFaults(entry, stockType(tube.designation, shop), dayInZone(now, shop.timeZone))
  const { day, ...facts } = entry.shorts ? { ...entry, ...NOTHING_SET } : entry
  if (faults.length > 0 || day === null) {
    return refuse({ code: 'tubes-refused', faults: faults.map((fault) => ({ ...fault, row: null })) })
  }
  const testedAt = testedInstant(day, now, shop.timeZone)
  const calibratedOn = await findCalibration(tx, entry.instrumentName)
  await addTest(tx, tube.id, { ...facts, testedAt, testedBy: actor.name, calibratedOn, sheetId })
  const words = wordsFor(shop.words)
  const changes = changesBetween(shown([]), testShown(facts, formatDay(day, words.locale), words))
  await writeHistory(tx, { at: now, person: actor.name, subject: 'tube', subjectId: tube.id, did: 'Tested', changes })
}

/** A short is looked for before any voltage is set, so the point it was to be tested at is none it was tested at. */
const NOTHING_SET = { plateVoltage: null, screenVoltage: null, gridVoltage: null, sections: [] } as const

async function rejectTube(tx: Tx, { actor, now }: Step, tube: Tube): Promise<void> {
  const version = await saveCondition(tx, tube, 'reject')
  const changes = [{ label: 'Condition', from: conditionWord(tube.condition), to: conditionWord('reject') }]
  const note = { at: now, person: actor.name, subject: 'tube', subjectId: tube.id, did: 'Marked as a reject' } as const
  await writeHistory(tx, { ...note, changes, version })
}
