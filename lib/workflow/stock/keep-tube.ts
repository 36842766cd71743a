/** Takes one tube into stock, with its first test when there was one, or corrects what is written about it. */
import { formatDay } from '@/lib/domain/calendar'
import { changesBetween, type Shown, shown } from '@/lib/domain/history/changes'
import { formatMoney, type Money } from '@/lib/domain/money'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { stockType } from '@/lib/domain/stock/stock-type'
import type { TestEntry } from '@/lib/domain/stock/test-entry'
import type { TubeDetails } from '@/lib/domain/stock/tube'
import type { TubeFault } from '@/lib/domain/stock/tube-fault'
import { furtherShown, NOTHING_FURTHER, type TubeFurther } from '@/lib/domain/stock/tube-further'
import { FIRST_TUBE_NUMBER, markOfNumber, readMark } from '@/lib/domain/stock/tube-mark'
import { tubeShown } from '@/lib/domain/stock/tube-text'
import { wordsFor } from '@/lib/domain/words'
import { nextNumber } from '@/lib/store/counter'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { createTube, findTube, findTubeByMark, saveTube } from '@/lib/store/tube'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { recordTest, shopOf } from './add-tube-test'

export type TubeInput = {
  readonly id: string | null
  readonly version: number
  /** An empty mark: the next free one is given; on a correction the mark stays. */
  readonly details: TubeDetails
  /** Left out: nothing further is known of a new one; on a correction it stays. */
  readonly further?: TubeFurther
  /** Only with a new tube. */
  readonly test: TestEntry | null
}

export function keepTube(step: Step, input: TubeInput): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const { id, details, test } = input
      if (id !== null) return correct(tx, step, id, input)
      const shop = await shopOf(tx)
      const mark = details.mark === '' ? await nextMark(tx) : settled(await freeMark(tx, details.mark, null))
      return addTube(tx, step, shop, { ...details, mark }, test, input.further)
    }),
  )
}

/** With a mark that is known to be free. */
export async function addTube(
  tx: Tx,
  step: Step,
  shop: Shop,
  details: TubeDetails,
  test: TestEntry | null,
  further: TubeFurther = NOTHING_FURTHER,
): Promise<string> {
  const { actor, now } = step
  const id = await createTube(tx, details, stockType(details.designation, shop).family, further)
  const changes = changesBetween(shown([]), wholeShown(details, further, shop))
  const note = { at: now, person: actor.name, subject: 'tube', subjectId: id, did: 'Taken into stock' } as const
  await writeHistory(tx, { ...note, changes, version: 1 })
  if (test) await recordTest(tx, step, shop, { id, designation: details.designation }, test)
  return id
}

async function correct(tx: Tx, { actor, now }: Step, id: string, input: TubeInput): Promise<string> {
  const { version, details: typed } = input
  const before = await findTube(id, tx)
  if (!before) return refuse({ code: 'not-found', what: 'This piece' })
  if (before.version !== version) return refuse(await stale(tx, 'tube', id, version))
  const mark = typed.mark === '' ? before.mark : settled(await freeMark(tx, typed.mark, id))
  const details = { ...typed, mark }
  const shop = await shopOf(tx)
  const { family } = stockType(details.designation, shop)
  const further = input.further ?? before.further
  if (!(await saveTube(tx, { id, version, further }, details, family)))
    return refuse(await stale(tx, 'tube', id, version))
  const changes = changesBetween(wholeShown(before, before.further, shop), wholeShown(details, further, shop))
  const note = { at: now, person: actor.name, subject: 'tube', subjectId: id, did: 'Corrected' } as const
  await writeHistory(tx, { ...note, changes, version: version + 1 })
  return id
}

function wholeShown(details: TubeDetails, further: TubeFurther, shop: Shop): Shown {
  const { locale } = wordsFor(shop.words)
  return new Map([...tubeShown(details, moneyIn(shop)), ...furtherShown(further, (day) => formatDay(day, locale))])
}

const moneyIn = (shop: Shop) => (amount: Money) => formatMoney(amount, shop.currency, wordsFor(shop.words).locale)

function settled(mark: Result<string, TubeFault>): string {
  return mark.ok ? mark.value : refuse({ code: 'tubes-refused', faults: [mark.fault] })
}

/** The mark as it is written down, unless another tube than `own` bears it. */
export async function freeMark(tx: Tx, typed: string, own: string | null): Promise<Result<string, TubeFault>> {
  const mark = readMark(typed)
  if (mark === null) return fail({ code: 'not-a-mark', field: 'mark', typed, row: null })
  const bearer = await findTubeByMark(mark, tx)
  if (!bearer || bearer.id === own) return ok(mark)
  return fail({ code: 'mark-taken', field: 'mark', mark, designation: bearer.designation, row: null })
}

/** Numbers whose mark somebody has already written by hand are passed over. */
export async function nextMark(tx: Tx, alsoTaken: ReadonlySet<string> = new Set()): Promise<string> {
  for (;;) {
    const mark = markOfNumber(await nextNumber(tx, 'tube', FIRST_TUBE_NUMBER))
    if (!alsoTaken.has(mark) && !(await findTubeByMark(mark, tx))) return mark
  }
}
