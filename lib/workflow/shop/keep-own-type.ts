/**
 * Writes down a tube type the handbook does not know, corrects it, withdraws it. Tubes in
 * stock that bear one of its numbers take its family in the same change, so they are found.
 */
import { changesBetween, shown } from '@/lib/domain/history/changes'
import { ownModel } from '@/lib/domain/model/catalogue-model'
import { mayDo } from '@/lib/domain/person/role'
import { fail, type Result } from '@/lib/domain/result'
import { stockType } from '@/lib/domain/stock/stock-type'
import { ownTubeTypeOf } from '@/lib/domain/tube/own/own-tube-type'
import type { OwnTypeEntry } from '@/lib/domain/tube/own/own-type-entry'
import { type OwnTypeFault, ownTypeFaults } from '@/lib/domain/tube/own/own-type-faults'
import { ownTypeShown } from '@/lib/domain/tube/own/own-type-shown'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import {
  createOwnType,
  findOwnType,
  findOwnTypeByName,
  type KeptOwnType,
  listOwnTubeTypes,
  saveOwnType,
} from '@/lib/store/own-type'
import { listDesignationsInStock, moveToFamily } from '@/lib/store/tube-family'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export type OwnTypeInput = {
  /** Null for a new one. */
  readonly id: string | null
  readonly version: number
  readonly entry: OwnTypeEntry
  readonly active: boolean
}

/** Whoever measures by it, and whoever keeps the shop. */
export const mayKeepTypes = ({ actor }: Pick<Step, 'actor'>): boolean =>
  mayDo(actor, 'bench-work') || mayDo(actor, 'keep-shop')

export async function keepOwnType(step: Step, input: OwnTypeInput): Promise<Result<string, StepFault>> {
  if (!mayKeepTypes(step)) return fail({ code: 'not-your-duty', duty: 'bench-work' })
  return refusing(() =>
    inTransaction(async (tx) => {
      await refuseFaults(tx, input)
      const id = input.id === null ? await add(tx, step, input) : await correct(tx, step, { ...input, id: input.id })
      await refamily(tx)
      return id
    }),
  )
}

async function refuseFaults(tx: Tx, { id, entry, active }: OwnTypeInput): Promise<void> {
  if (!active) return
  const all = await listOwnTubeTypes(tx)
  const others = { ownTypes: all.filter((type) => type.id !== id) }
  const withdrawn = await findOwnTypeByName(tx, entry.designation)
  const faults: OwnTypeFault[] = [...ownTypeFaults(entry, others), ...curveFaults(entry)]
  if (withdrawn && withdrawn.id !== id && faults.length === 0)
    refuse({ code: 'type-withdrawn', designation: entry.designation })
  if (faults.length > 0) refuse({ code: 'own-type-refused', faults })
}

/** Its curves must be able to meet the operating points noted for it. */
function curveFaults(entry: OwnTypeEntry): OwnTypeFault[] {
  if (!entry.curves) return []
  const model = ownModel(ownTubeTypeOf('new', entry))
  if (model.ok) return []
  return [{ code: 'curves-do-not-fit', field: 'curvesLike', like: entry.curves.typeId, cause: model.fault }]
}

async function add(tx: Tx, { actor, now }: Step, { entry }: OwnTypeInput): Promise<string> {
  const id = await createOwnType(tx, entry)
  const changes = changesBetween(shown([]), ownTypeShown(entry))
  const note = { at: now, person: actor.name, subject: 'type', subjectId: id, did: 'Type written down' } as const
  await writeHistory(tx, { ...note, changes, version: 1 })
  return id
}

async function correct(tx: Tx, { actor, now }: Step, input: KeptOwnType): Promise<string> {
  const { id, version, entry, active } = input
  const before = await findOwnType(id, tx)
  if (!before) return refuse({ code: 'not-found', what: 'This type' })
  if (!(await saveOwnType(tx, input))) return refuse(await stale(tx, 'type', id, version))
  const changes = changesBetween(ownTypeShown(before.entry, before.active), ownTypeShown(entry, active))
  const did = before.active && !active ? 'Type withdrawn' : 'Type corrected'
  const note = { at: now, person: actor.name, subject: 'type', subjectId: id, did } as const
  await writeHistory(tx, { ...note, changes, version: version + 1 })
  return id
}

async function refamily(tx: Tx): Promise<void> {
  const catalogue: TubeCatalogue = { ownTypes: await listOwnTubeTypes(tx) }
  for (const { designation, family } of await listDesignationsInStock(tx)) {
    const now = stockType(designation, catalogue).family
    if (now !== family) await moveToFamily(tx, { designation, from: family, to: now })
  }
}
