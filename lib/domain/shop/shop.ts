/**
 * The shop's own settings. Limits that depend on country or custom are here as
 * editable defaults: they are the shop's rule, never law.
 */
import type { Money } from '@/lib/domain/money'
import type { OwnTubeType } from '@/lib/domain/tube/tube-catalogue'
import type { WordSet } from '@/lib/domain/words'

export type PaperSize = 'A4' | 'LETTER'

/** Percent of the plate rating, inclusive. */
export type PercentWindow = { readonly low: number; readonly high: number }

export type Shop = {
  readonly name: string
  readonly address: string
  readonly phone: string
  readonly email: string
  /** ISO 4217. */
  readonly currency: string
  readonly taxName: string
  /** Rate times 1000: 8.875 % is 8875. */
  readonly taxMilliPercent: number
  readonly mainsVolts: number
  /** IANA name. */
  readonly timeZone: string
  readonly paper: PaperSize
  readonly words: WordSet
  readonly hourlyRate: Money
  readonly depositPercent: number
  readonly quoteValidDays: number
  readonly warrantyDays: number
  readonly recheckDays: number
  readonly testAgeDays: number
  readonly receiptTerms: string
  readonly warrantyTerms: string
  readonly idleFixed: PercentWindow
  readonly idleCathode: PercentWindow
  readonly idleSingle: PercentWindow
  readonly earthBondMaxOhms: number
  readonly insulationMinOhms: number
  readonly leakageMaxAmps: number
  readonly soakMinMinutes: number
  readonly demo: boolean
  readonly version: number
  /** Tube types it wrote down beside the handbook. */
  readonly ownTypes: readonly OwnTubeType[]
}

export type ShopSettings = Omit<Shop, 'version' | 'demo' | 'ownTypes'>

/**
 * What a new shop starts from. Idle windows: common practice, no source.
 * Earth bond 0.3 ohm, insulation 1 Mohm, leakage 3.5 mA: figures usual for
 * class I equipment after repair (EN 50678); soak an hour, from memory. The
 * shop checks them against its own country's rules.
 */
export const NEW_SHOP_DEFAULTS = {
  depositPercent: 0,
  quoteValidDays: 21,
  warrantyDays: 90,
  recheckDays: 42,
  testAgeDays: 365,
  idleFixed: { low: 60, high: 70 },
  idleCathode: { low: 80, high: 100 },
  idleSingle: { low: 80, high: 100 },
  earthBondMaxOhms: 0.3,
  insulationMinOhms: 1_000_000,
  leakageMaxAmps: 0.0035,
  soakMinMinutes: 60,
} as const
