/**
 * Numbers and names as the calculators take them. Bounds are wide: they catch a slipped
 * point or a wrong unit, they are no ratings.
 */
import { z } from 'zod'

const between = (lowest: number, highest: number, meaning: string) =>
  z.number().min(lowest).max(highest).describe(meaning)

export const voltsFromZero = (meaning: string) => between(0, 5000, meaning)
export const gridVolts = (meaning: string) => between(-1000, 200, meaning)
export const dropMillivolts = (meaning: string) => between(0, 200_000, meaning)
export const milliampsFromZero = (meaning: string) => between(0, 10_000, meaning)
export const ohmsAboveZero = (meaning: string) => z.number().gt(0).max(10_000_000).describe(meaning)
export const ohmsFromZero = (meaning: string) => between(0, 10_000_000, meaning)
export const tolerancePercent = (meaning: string) => z.number().min(0).lt(100).describe(meaning)
export const name = (meaning: string) => z.string().min(1).max(60).describe(meaning)
