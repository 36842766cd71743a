/** A stocked tube as it may be proposed for a socket: by its own test record, or the reason why not. */
import type { ProposedTube } from '@/lib/domain/circuit/change/change'
import { catalogueModel } from '@/lib/domain/model/catalogue-model'
import { type IndividualFault, individualTube } from '@/lib/domain/model/individual-tube'
import type { TypeModel } from '@/lib/domain/model/type-model'
import { fail, ok, type Result } from '@/lib/domain/result'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import type { Words } from '@/lib/domain/words'
import { type TestReadings, testRecordOf } from './test-record-of'
import { activeHold, type Tube, type Whereabouts, whereaboutsWord } from './tube'

export type StockProposalFault =
  | { readonly code: 'gone'; readonly mark: string; readonly whereabouts: Whereabouts }
  | { readonly code: 'rejected'; readonly mark: string }
  | { readonly code: 'short'; readonly mark: string }
  | { readonly code: 'not-tested'; readonly mark: string }
  | { readonly code: 'no-output-curves'; readonly mark: string; readonly designation: string }
  | {
      readonly code: 'record-refused'
      readonly mark: string
      readonly designation: string
      readonly fault: IndividualFault
    }

/** The mark tells too for whom it is held: a plan made with it may come to nothing. */
function markText({ mark, hold, heldUntil, heldForJobNumber }: ProposableTube['tube'], now: Date): string {
  if (activeHold({ hold, heldUntil }, now) === '') return mark
  return `${mark} (held for ${heldForJobNumber ? `job ${heldForJobNumber}` : 'another job'})`
}

/** What of a stocked tube is asked about. */
export type ProposableTube = {
  readonly tube: Pick<
    Tube,
    'mark' | 'designation' | 'whereabouts' | 'condition' | 'hold' | 'heldUntil' | 'heldForJobNumber'
  >
  readonly test: TestReadings | null
  readonly shortsFoundAt: Date | null
}

export function proposedFromStock(
  { tube, test, shortsFoundAt }: ProposableTube,
  catalogue: TubeCatalogue,
  now: Date,
): Result<ProposedTube, StockProposalFault> {
  const { mark, designation, whereabouts, condition } = tube
  // One that is fitted may be asked about too: swapping two sockets is a change like another.
  if (whereabouts === 'sold' || whereabouts === 'scrapped') return fail({ code: 'gone', mark, whereabouts })
  if (condition === 'reject') return fail({ code: 'rejected', mark })
  if (shortsFoundAt) return fail({ code: 'short', mark })
  const record = test && testRecordOf(test)
  if (!record) return fail({ code: 'not-tested', mark })
  const type = outputTypeOf(designation, catalogue)
  if (!type) return fail({ code: 'no-output-curves', mark, designation })
  const own = individualTube(type.model, [record])
  if (!own.ok) return fail({ code: 'record-refused', mark, designation, fault: own.fault })
  return ok({ kind: 'individual', variant: type.variant, tube: own.value, mark: markText(tube, now) })
}

type OutputType = { readonly variant: TubeVariant; readonly model: TypeModel }

/** Of a long stock each designation is looked up once: kept as long as the list of the shop's own types. */
const lookedUp = new WeakMap<TubeCatalogue['ownTypes'], Map<string, OutputType | null>>()
const MOST_LOOKED_UP = 1000

function outputTypeOf(designation: string, catalogue: TubeCatalogue): OutputType | null {
  const known = lookedUp.get(catalogue.ownTypes) ?? new Map<string, OutputType | null>()
  lookedUp.set(catalogue.ownTypes, known)
  const found = known.get(designation)
  if (found !== undefined) return found
  const variant = findTubeType(designation, catalogue)
  const model = variant?.role === 'output' ? catalogueModel(variant.typeId, catalogue) : null
  const type = variant && model?.ok ? { variant, model: model.value } : null
  if (known.size < MOST_LOOKED_UP) known.set(designation, type)
  return type
}

function recordText(fault: IndividualFault, designation: string): string {
  switch (fault) {
    case 'no-record':
    case 'reading-not-positive':
      return 'no current is in it'
    case 'test-point-cut-off':
      return `a ${designation} carries next to no current at its test point`
    case 'readings-not-distinct':
      return 'its readings are too alike to tell the strength by'
    case 'unlike-the-type':
      return `it differs from a ${designation} by more than a factor of four`
  }
}

export function stockProposalFaultText(fault: StockProposalFault, { tube }: Words): string {
  const { mark } = fault
  switch (fault.code) {
    case 'gone':
      return `${mark} is ${whereaboutsWord(fault.whereabouts)}.`
    case 'rejected':
      return `${mark} is marked as reject.`
    case 'short':
      return `${mark} showed a short at its last test.`
    case 'not-tested':
      return `${mark} has no test that tells its strength. Test it, or ask by its type.`
    case 'no-output-curves':
      return `${mark} is a ${fault.designation}, of which no curves as an output ${tube} are known.`
    case 'record-refused':
      return `The test of ${mark} cannot be used: ${recordText(fault.fault, fault.designation)}.`
  }
}
