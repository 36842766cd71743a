/** The shop's settings as they are read: in the history, and by those who may not change them. */
import { type Shown, shown } from '@/lib/domain/history/changes'
import { formatMoney } from '@/lib/domain/money'
import { capital, wordsFor } from '@/lib/domain/words'
import type { PercentWindow, ShopSettings } from './shop'

const days = (count: number): string => `${count} ${count === 1 ? 'day' : 'days'}`
const span = ({ low, high }: PercentWindow): string => `${low}–${high} %`
/** Without the tail of a binary fraction: 0.0035 A is 3.5 mA. */
const plain = (value: number): string => String(Number(value.toPrecision(9)))

export const percentText = (milliPercent: number): string => `${plain(milliPercent / 1000)} %`

export function shopShown(shop: ShopSettings): Shown {
  const words = wordsFor(shop.words)
  return shown([
    ['Name', shop.name],
    ['Postal address', shop.address],
    ['Phone', shop.phone],
    ['E-mail', shop.email],
    ['Currency', shop.currency],
    ['Hourly rate', formatMoney(shop.hourlyRate, shop.currency, words.locale)],
    ['Tax', `${shop.taxName} ${percentText(shop.taxMilliPercent)}`],
    ['Deposit', `${shop.depositPercent} %`],
    ['Quotes stand for', days(shop.quoteValidDays)],
    ['Terms on the receipt', shop.receiptTerms],
    ['Warranty', days(shop.warrantyDays)],
    ['Warranty terms', shop.warrantyTerms],
    ['Check again after', days(shop.recheckDays)],
    [`${capital(words.tube)} tests count for`, days(shop.testAgeDays)],
    ['Mains', `${plain(shop.mainsVolts)} V`],
    ['Idle window, fixed bias', span(shop.idleFixed)],
    ['Idle window, cathode bias', span(shop.idleCathode)],
    ['Idle window, single-ended', span(shop.idleSingle)],
    ['Earth bond at most', `${plain(shop.earthBondMaxOhms)} Ω`],
    ['Insulation at least', `${plain(shop.insulationMinOhms / 1e6)} MΩ`],
    ['Leakage at most', `${plain(shop.leakageMaxAmps * 1000)} mA`],
    ['Soak at least', `${shop.soakMinMinutes} min`],
    ['Time zone', shop.timeZone],
    ['Paper', shop.paper],
    ['Words', shop.words],
  ])
}
