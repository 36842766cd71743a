/** Opens a sheet at the tube tester: type, instrument and test point once, for the tubes that follow. */
import { dayInZone } from '@/lib/domain/calendar'
import type { Result } from '@/lib/domain/result'
import type { TestSheetDetails } from '@/lib/domain/stock/sheet/test-sheet'
import { stockType } from '@/lib/domain/stock/stock-type'
import { testFaults } from '@/lib/domain/stock/test-entry'
import type { TubeFault } from '@/lib/domain/stock/tube-fault'
import { inTransaction } from '@/lib/store/database'
import { createTestSheet } from '@/lib/store/test-sheet'
import { allowed, refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { shopOf } from './add-tube-test'

export type NewTestSheet = Omit<TestSheetDetails, 'day'> & { readonly day: TestSheetDetails['day'] | null }

/** What the head of a sheet answers for; readings come later. */
const HEAD: ReadonlySet<string> = new Set(['day', 'instrumentName', 'plateVolts', 'screenVolts', 'gridVolts'])
const NOTHING_YET = { sections: [], shorts: false, leakage: '', gas: '', noise: '', microphony: '', note: '' } as const

/** Gives the id of the sheet. */
export function startTestSheet(step: Step, details: NewTestSheet): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const duty = allowed(step, 'bench-work')
      if (!duty.ok) return refuse(duty.fault)
      const shop = await shopOf(tx)
      const type = stockType(details.designation, shop)
      const { day } = details
      const today = dayInZone(step.now, shop.timeZone)
      const faults: TubeFault[] = testFaults({ ...details, ...NOTHING_YET }, type, today)
        .filter(({ field }) => HEAD.has(field))
        .map((fault) => ({ ...fault, row: null }))
      if (details.sections === 2 && !type.mayHaveTwoSections)
        faults.push({ code: 'one-section-only', field: 'sections', designation: type.designation, row: null })
      if (faults.length > 0 || day === null) return refuse({ code: 'tubes-refused', faults })
      return createTestSheet(tx, { ...details, day, startedAt: step.now, startedBy: step.actor.name })
    }),
  )
}
