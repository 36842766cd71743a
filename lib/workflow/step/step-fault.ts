/** Every expected refusal of a step. The sentences stand in step-fault-text.ts. */
import type { SheetFault } from '@/lib/domain/amp/settle-sheet'
import type { Change } from '@/lib/domain/history/changes'
import type { JobState } from '@/lib/domain/job/job-state'
import type { PickupFault } from '@/lib/domain/job/pickup-fault'
import type { Duty } from '@/lib/domain/person/role'
import type { QuoteFault } from '@/lib/domain/quote/quote-fault'
import type { SafetyFault } from '@/lib/domain/safety/safety-fault'
import type { PlanChange } from '@/lib/domain/stock/plan-change'
import type { StockFault } from '@/lib/domain/stock/stock-fault'
import type { Whereabouts } from '@/lib/domain/stock/tube'
import type { TubeFault } from '@/lib/domain/stock/tube-fault'
import type { OwnTypeFault } from '@/lib/domain/tube/own/own-type-faults'
import type { TableFault } from '@/lib/exchange/read-table'

export type StepFault =
  | { readonly code: 'not-your-duty'; readonly duty: Duty }
  | { readonly code: 'not-found'; readonly what: string }
  | {
      readonly code: 'stale'
      readonly savedBy: string
      readonly savedAt: Date | null
      readonly changes: readonly Change[]
    }
  | { readonly code: 'currency-stands'; readonly currency: string }
  | { readonly code: 'last-keeper'; readonly name: string }
  | { readonly code: 'sign-in-name-taken'; readonly signInName: string }
  | { readonly code: 'pass-phrase-wrong' }
  | { readonly code: 'too-many-tries' }
  | { readonly code: 'not-your-instruments' }
  | { readonly code: 'meter-has-readings'; readonly name: string }
  | { readonly code: 'own-type-refused'; readonly faults: readonly OwnTypeFault[] }
  | { readonly code: 'type-withdrawn'; readonly designation: string }
  | { readonly code: 'maker-there'; readonly name: string }
  | { readonly code: 'cannot-move'; readonly from: JobState; readonly to: JobState }
  | { readonly code: 'tubes-refused'; readonly faults: readonly TubeFault[] }
  | { readonly code: 'tube-held'; readonly mark: string; readonly jobNumber: string | null }
  | { readonly code: 'tube-fitted'; readonly mark: string; readonly place: string }
  | { readonly code: 'tube-already'; readonly mark: string; readonly whereabouts: Whereabouts }
  | { readonly code: 'amp-already-here'; readonly jobNumber: string }
  | SheetFault
  | QuoteFault
  | SafetyFault
  | PickupFault
  | StockFault
  | { readonly code: 'table-refused'; readonly fault: TableFault }
  | { readonly code: 'socket-in-use'; readonly position: string; readonly readings: number; readonly fittings: number }
  | { readonly code: 'sheet-not-empty'; readonly sockets: number }
  | { readonly code: 'other-model'; readonly model: string; readonly wanted: string }
  /** Not empty. */
  | { readonly code: 'plan-stale'; readonly changes: readonly PlanChange[] }
  | { readonly code: 'nothing-read' }
  | { readonly code: 'job-closed'; readonly state: JobState }
