/** Whether two tests can be compared as they stand: one instrument, one test point. */
import { TEST_POINT_TOLERANCE } from '../matching/match-limits'
import type { TestSetting, TubeTest } from './tube'

const near = (a: number | null, b: number | null, within: number): boolean =>
  a === null || b === null ? a === b : Math.abs(a - b) <= within

export const isSamePoint = (a: TestSetting, b: TestSetting): boolean =>
  near(a.plateVoltage, b.plateVoltage, TEST_POINT_TOLERANCE.plateVoltage) &&
  near(a.screenVoltage, b.screenVoltage, TEST_POINT_TOLERANCE.screenVoltage) &&
  near(a.gridVoltage, b.gridVoltage, TEST_POINT_TOLERANCE.gridVoltage)

export const isAlikePoint = (a: TubeTest, b: TubeTest): boolean =>
  a.instrumentName === b.instrumentName && isSamePoint(a, b)
