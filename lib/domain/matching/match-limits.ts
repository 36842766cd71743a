/**
 * Figures the choice of a set starts from; the shop may set its own.
 */
import { amps, ratio, volts } from '../units'
import type { Yardsticks } from './candidate'

/** 5 mA and 10 %: common practice, no source. */
export const USUAL_YARDSTICKS: Yardsticks = { plateCurrent: amps(0.005), transconductance: ratio(0.1) }

/** What one yardstick of transconductance counts against one of plate current. */
export const TRANSCONDUCTANCE_WEIGHT = 1

/** Yardsticks charged to a set whose transconductance was not measured: unknown is not a perfect match. */
export const UNMEASURED_CHARGE = 1

export const LARGEST_SET = 8

/** Sets shown beside the closest and the cheapest. */
export const FURTHER_SETS = 3

/**
 * How far a record may lie from the nominal test point of its group. Meant for
 * the rounding of one and the same setting, not for different settings: at a
 * transconductance of 6 mA/V, 0.05 V of grid is 0.3 mA of plate current, and so is
 * 0.5 V of screen at a screen amplification of 8 (0.4 mA). Common practice, no source.
 */
export const TEST_POINT_TOLERANCE = { plateVoltage: volts(0.5), screenVoltage: volts(0.5), gridVoltage: volts(0.05) }
