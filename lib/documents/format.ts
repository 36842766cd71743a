/**
 * How every value on a paper is written: the one place.
 *
 * A reading keeps three figures (425 V, 35.2 mA, 1.59 V). A value with a band
 * keeps as many decimals as its half-width can carry: one figure of it, two when
 * the first is 1 or 2, the half-width rounded up so that paper does not claim more
 * than was known (JCGM 100:2008, 7.2.6, from memory: at most two figures, 10.47 to
 * 11, 28.05 to 28). Money and numbers follow
 * the shop's locale, dates its words and zone.
 */
import { formatMoney, type Money } from '@/lib/domain/money'
import type { Amps, Ratio, Seconds, Siemens, Volts, Watts } from '@/lib/domain/units'
import type { Banded, PaperSettings } from './facts'
import { vocabulary } from './words'

export const NOT_RECORDED = 'not recorded'
const THIN_SPACES = /[\u202f\u2009]/g
export const NO_BREAK = '\u00a0'

export type Format = {
  readonly money: (amount: Money) => string
  readonly number: (value: number, decimals: number) => string
  /** Thousandths as a decimal without trailing zeros: 1250 is "1.25". */
  readonly quantity: (thousandths: number) => string
  readonly count: (count: number) => string
  /** A plain day, "2026-10-08". */
  readonly day: (day: string) => string
  /** A day to keep, with its weekday. */
  readonly dueDay: (day: string) => string
  readonly instant: (instant: string) => string
  readonly instantDay: (instant: string) => string
  readonly volts: (value: Volts) => string
  readonly milliamps: (value: Amps) => string
  readonly milliampsPerVolt: (value: Siemens) => string
  readonly watts: (value: Watts) => string
  readonly percent: (value: Ratio) => string
  readonly minutes: (value: Seconds) => string
  /** What was set or agreed, not read: no zeros that claim precision. "36 V", "5 mA". */
  readonly settled: (value: number, unit: string) => string
  /** A tax rate, in thousandths of a per cent. */
  readonly rate: (milliPercent: number) => string
  readonly bandedMilliamps: (value: Banded<Amps>) => string
  readonly bandedWatts: (value: Banded<Watts>) => string
  readonly bandedPercent: (value: Banded<Ratio>) => string
}

/** Decimals that leave three figures; a value under one keeps two, under a tenth three. */
export function readingDecimals(value: number): number {
  const size = Math.abs(value)
  if (size >= 99.95) return 0
  if (size >= 9.995) return 1
  return size >= 0.0995 || size === 0 ? 2 : 3
}

/** Decimals that `half` can carry; at most three. */
export function bandDecimals(half: number): number {
  const exponent = Math.floor(Math.log10(half))
  const leading = Math.floor(half / 10 ** exponent)
  return Math.min(3, Math.max(0, -exponent + (leading < 3 ? 1 : 0)))
}

/** Up, unless the nearest value takes less than a fiftieth away: 10.47 is 11, 28.05 is 28. */
function roundedHalf(half: number, decimals: number): number {
  const scale = 10 ** decimals
  const nearest = Math.round(half * scale) / scale
  return nearest >= half * 0.98 ? nearest : Math.ceil(half * scale) / scale
}

/** "2026-02-30" would roll over to March without a sound. */
function dayAsDate(day: string): Date {
  const date = new Date(`${day}T00:00:00Z`)
  if (Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== day)
    throw new Error(`A day must be a real date as YYYY-MM-DD, got "${day}"`)
  return date
}

function instantAsDate(instant: string): Date {
  const date = new Date(instant)
  // Without a zone the machine's own would be taken, and the paper would differ from machine to machine.
  if (Number.isNaN(date.getTime()) || !/(Z|[+-]\d\d:?\d\d)$/.test(instant))
    throw new Error(`An instant must be ISO 8601 with a zone, got "${instant}"`)
  return date
}

const minusSign = (text: string): string => text.replace(/^-/, '\u2212')
const plainSpaces = (text: string): string => text.replace(THIN_SPACES, NO_BREAK)

type NumberWriter = (value: number, decimals: number) => string

function numberWriter(locale: string): NumberWriter {
  return (value, decimals) => {
    const digits = { minimumFractionDigits: decimals, maximumFractionDigits: decimals }
    // Adding zero turns a rounded −0 into 0.
    const rounded = Number(value.toFixed(decimals)) + 0
    return minusSign(plainSpaces(new Intl.NumberFormat(locale, digits).format(rounded)))
  }
}

function banded(write: NumberWriter, value: number, half: number | null, unit: string): string {
  if (half === null || half <= 0) return `${write(value, readingDecimals(value))}${NO_BREAK}${unit}`
  const decimals = bandDecimals(half)
  const text = `${write(value, decimals)}${NO_BREAK}±${NO_BREAK}${write(roundedHalf(half, decimals), decimals)}`
  return `${text}${NO_BREAK}${unit}`
}

function dateWriters(settings: PaperSettings): Pick<Format, 'day' | 'dueDay' | 'instant' | 'instantDay'> {
  const { locale: language } = vocabulary(settings.words)
  const date = { day: 'numeric', month: 'short', year: 'numeric' } as const
  const hour = settings.words === 'US' ? 'numeric' : '2-digit'
  const time = { ...date, hour, minute: '2-digit', timeZone: settings.zone } as const
  const day = new Intl.DateTimeFormat(language, { ...date, timeZone: 'UTC' })
  const dueDay = new Intl.DateTimeFormat(language, { ...date, weekday: 'short', timeZone: 'UTC' })
  const instantDay = new Intl.DateTimeFormat(language, { ...date, timeZone: settings.zone })
  const instant = new Intl.DateTimeFormat(language, time)
  return {
    day: (on) => plainSpaces(day.format(dayAsDate(on))),
    dueDay: (on) => plainSpaces(dueDay.format(dayAsDate(on))),
    instant: (at) => plainSpaces(instant.format(instantAsDate(at))),
    instantDay: (at) => plainSpaces(instantDay.format(instantAsDate(at))),
  }
}

export function formatFor(settings: PaperSettings): Format {
  const { locale, currency } = settings
  const write = numberWriter(locale)
  const trimmed = new Intl.NumberFormat(locale, { maximumFractionDigits: 3 })
  const reading = (value: number, unit: string): string => banded(write, value, null, unit)
  const half = (value: number | null, scale: number): number | null => (value === null ? null : value * scale)
  return {
    ...dateWriters(settings),
    money: (amount) => minusSign(plainSpaces(formatMoney(amount, currency, locale))),
    number: write,
    quantity: (thousandths) => plainSpaces(trimmed.format(thousandths / 1000)),
    count: (count) => plainSpaces(trimmed.format(count)),
    volts: (value) => reading(value, 'V'),
    milliamps: (value) => reading(value * 1000, 'mA'),
    milliampsPerVolt: (value) => reading(value * 1000, 'mA/V'),
    watts: (value) => reading(value, 'W'),
    percent: (value) => `${write(value * 100, 0)}${NO_BREAK}%`,
    minutes: (value) => `${write(value / 60, 0)}${NO_BREAK}min`,
    settled: (value, unit) => `${minusSign(plainSpaces(trimmed.format(value)))}${NO_BREAK}${unit}`,
    rate: (milliPercent) => `${plainSpaces(trimmed.format(milliPercent / 1000))}${NO_BREAK}%`,
    bandedMilliamps: (value) => banded(write, value.value * 1000, half(value.half, 1000), 'mA'),
    bandedWatts: (value) => banded(write, value.value, value.half, 'W'),
    bandedPercent: (value) =>
      value.half === null
        ? `${write(value.value * 100, 0)}${NO_BREAK}%`
        : banded(write, value.value * 100, value.half * 100, '%'),
  }
}
