import * as z from 'zod/mini'
import { depending } from '@/app/_components/form/depending'
import { after, version } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { exactDecimal, minorDigits } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { basicFields, furtherFields } from './shop-fields'

export const shopSchema = depending((typed) =>
  after(
    z.object({ version: version(), ...basicFields(typed), ...furtherFields(typed) }),
    ({ version: saved, ...boxes }) => {
      const { idleFixedLow, idleFixedHigh, idleCathodeLow, idleCathodeHigh, idleSingleLow, idleSingleHigh, ...rest } =
        boxes
      const settings = {
        ...rest,
        idleFixed: { low: idleFixedLow, high: idleFixedHigh },
        idleCathode: { low: idleCathodeLow, high: idleCathodeHigh },
        idleSingle: { low: idleSingleLow, high: idleSingleHigh },
      }
      return { version: saved, settings }
    },
  ),
)

/** Without the tail of a binary fraction: 0.0035 A stands in its box as 3.5 mA. */
const plain = (value: number): string => String(Number(value.toPrecision(9)))

export function shopValues(shop: Shop): FormValues {
  const { idleFixed, idleCathode, idleSingle, demo: _demo, version: saved, ...rest } = shop
  const same = ['name', 'address', 'phone', 'email', 'currency', 'taxName', 'timeZone', 'paper', 'words'] as const
  const terms = ['receiptTerms', 'warrantyTerms'] as const
  const counts = [
    'depositPercent',
    'quoteValidDays',
    'warrantyDays',
    'recheckDays',
    'testAgeDays',
    'soakMinMinutes',
  ] as const
  const entries = [...same, ...terms, ...counts].map((name) => [name, String(rest[name])])
  return sheetValues({
    ...Object.fromEntries(entries),
    version: String(saved),
    taxMilliPercent: plain(rest.taxMilliPercent / 1000),
    hourlyRate: exactDecimal(rest.hourlyRate, minorDigits(rest.currency)),
    mainsVolts: plain(rest.mainsVolts),
    idleFixedLow: String(idleFixed.low),
    idleFixedHigh: String(idleFixed.high),
    idleCathodeLow: String(idleCathode.low),
    idleCathodeHigh: String(idleCathode.high),
    idleSingleLow: String(idleSingle.low),
    idleSingleHigh: String(idleSingle.high),
    earthBondMaxOhms: plain(rest.earthBondMaxOhms),
    insulationMinOhms: plain(rest.insulationMinOhms / 1e6),
    leakageMaxAmps: plain(rest.leakageMaxAmps * 1000),
  })
}
