/**
 * A sitting at the tube tester: one type, one instrument, one test point, and
 * tube after tube. The readings themselves are test records of each tube.
 */
import type { Day } from '../../calendar'
import type { Money } from '../../money'
import type { TestSetting, TubeCondition, TubeTest } from '../tube'

export type TestSheetDetails = TestSetting & {
  readonly designation: string
  readonly instrumentName: string
  readonly day: Day
  /** 2 for twins. */
  readonly sections: 1 | 2
  /** What a tube taken in on the way is written down as. */
  readonly condition: TubeCondition
  readonly location: string
  readonly price: Money
  readonly cost: Money | null
}

export type TestSheet = TestSheetDetails & {
  readonly id: string
  readonly startedAt: Date
  readonly startedBy: string
}

/** One tube of the sheet, by its test record. */
export type SheetLine = { readonly tubeId: string; readonly mark: string; readonly test: TubeTest }
