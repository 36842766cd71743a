/** Bench figures as text. Three significant figures at most: no bench reading is better. */
const decimalsOf = (size: number): number =>
  Math.min(4, Math.max(0, 2 - Math.floor(Math.log10(Math.max(Math.abs(size), 1e-9)))))

const fixed = (value: number, size: number): string => {
  const decimals = decimalsOf(size)
  const text = value.toFixed(decimals)
  return Number(text) === 0 ? (0).toFixed(decimals) : text
}

/** Nothing read is a plain 0: a meter shows no figures of it. */
const withUnit = (value: number, unit: string): string => (value === 0 ? `0 ${unit}` : `${fixed(value, value)} ${unit}`)

export const voltsText = (value: number): string =>
  Math.abs(value) < 1 && value !== 0 ? withUnit(1000 * value, 'mV') : withUnit(value, 'V')
export const milliampsText = (amperes: number): string => withUnit(1000 * amperes, 'mA')
/** A step towards a current, with as many decimals as the current itself: "6.7 mA" towards 43.1 mA. */
export const milliampStepText = (amperes: number, towards: number): string =>
  `${fixed(1000 * amperes, 1000 * towards)} mA`

/** What the half-width can carry: two figures of it when the first is 1 or 2, else one; a tenth of a mA at least. */
function bandDecimals(half: number): number {
  const exponent = Math.floor(Math.log10(half))
  const leading = Math.floor(half / 10 ** exponent)
  return Math.min(2, Math.max(1, -exponent + (leading < 3 ? 1 : 0)))
}

/** "10.9 ± 1.3 mA": the size, with its band rounded up to the same decimals. */
export function bandedMilliampsText({ value, plusMinus }: { value: number; plusMinus: number }): string {
  const [size, half] = [Math.abs(1000 * value), 1000 * plusMinus]
  const decimals = half > 0 ? bandDecimals(half) : decimalsOf(size)
  return `${size.toFixed(decimals)} ± ${(Math.ceil(half * 10 ** decimals - 1e-9) / 10 ** decimals).toFixed(decimals)} mA`
}
export const wattsText = (value: number): string => withUnit(value, 'W')
export const ohmsText = (value: number): string => withUnit(value, 'Ω')
export const celsiusText = (value: number): string => withUnit(value, '°C')

/** One decimal at most, none from 100 % up or where it would be a zero. */
export function percentText(percent: number): string {
  const text = Math.abs(percent) >= 99.95 ? percent.toFixed(0) : percent.toFixed(1)
  return `${text.replace(/\.0$/, '').replace(/^-0$/, '0')} %`
}

/** 0.7 is "70 %". */
export const shareText = (share: number): string => percentText(100 * share)
