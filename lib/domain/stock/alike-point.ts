/** Whether two tests were taken at one test point, so that their readings compare on one instrument. */
import { TEST_POINT_TOLERANCE } from '../matching/match-limits'
import type { TestSetting } from './tube'

const near = (a: number | null, b: number | null, within: number): boolean =>
  a === null || b === null ? a === b : Math.abs(a - b) <= within

export const isSamePoint = (a: TestSetting, b: TestSetting): boolean =>
  near(a.plateVoltage, b.plateVoltage, TEST_POINT_TOLERANCE.plateVoltage) &&
  near(a.screenVoltage, b.screenVoltage, TEST_POINT_TOLERANCE.screenVoltage) &&
  near(a.gridVoltage, b.gridVoltage, TEST_POINT_TOLERANCE.gridVoltage)
