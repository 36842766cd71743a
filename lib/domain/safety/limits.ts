/**
 * Limits that a safety line is held to. The shop's own figures come from its
 * settings; what is fixed stands here with its source. None of them is law: the
 * shop checks them against its own country's rules.
 */
import type { ProtectionClass } from '@/lib/domain/amp/amp'
import type { Shop } from '@/lib/domain/shop/shop'

/** V d.c. IEC 62368-1, class ES1, direct voltage: not more than 60 V. From memory. */
export const DISCHARGED_VOLTS = 60

/** Ohms at 500 V d.c. EN 50678, equipment of class II. From memory. */
export const CLASS_II_INSULATION_OHMS = 2_000_000

/** A, touch current on unearthed metal. EN 50678, equipment of class II. From memory. */
export const CLASS_II_LEAKAGE_AMPS = 0.0005

/** Per cent off the value on the sheet, either way. Common practice, no source. */
export const SCREEN_RESISTOR_PERCENT = 10

/** Per cent of the printed plate rating. */
export const RATING_PERCENT = 100

export type ShopLimits = Pick<Shop, 'earthBondMaxOhms' | 'insulationMinOhms' | 'leakageMaxAmps' | 'soakMinMinutes'>

/** Class II keeps the stricter of the shop's figure and the class's own. */
export function insulationLimit({ insulationMinOhms }: ShopLimits, protectionClass: ProtectionClass): number {
  return protectionClass === 'II' ? Math.max(insulationMinOhms, CLASS_II_INSULATION_OHMS) : insulationMinOhms
}

export function leakageLimit({ leakageMaxAmps }: ShopLimits, protectionClass: ProtectionClass): number {
  return protectionClass === 'II' ? Math.min(leakageMaxAmps, CLASS_II_LEAKAGE_AMPS) : leakageMaxAmps
}
