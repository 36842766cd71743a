/** What every adjustment of the group would have to be set to, and whether the amplifier reaches it. */
import { percentText, wattsText } from '@/lib/domain/bias/bias-figures'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { Trim } from '@/lib/domain/circuit/change/trims'
import { resistanceText, socketList, trimFaultText } from '@/lib/domain/circuit/circuit-text'
import type { Words } from '@/lib/domain/words'

const gridText = (volts: number): string => `${volts.toFixed(1).replace('-', '\u2212')} V`

type GridTrimOf = Extract<Trim, { kind: 'grid' }>
type ResistorTrimOf = Extract<Trim, { kind: 'resistor' }>

/** Off marked mains a meter shows other volts than the sheet has. */
const UNLIKE = 0.002

function rangeText({ result }: GridTrimOf, circuit: AmpCircuit): string {
  if (!result.ok) return ''
  const { withinRange, nearestInRange } = result.value
  const { gridColdestVolts, gridHottestVolts } = circuit.facts
  if (withinRange === null)
    return 'How far the adjustment reaches is not on the supply sheet: write it down there to be told.'
  const range = `${gridText(gridColdestVolts ?? 0)} to ${gridText(gridHottestVolts ?? 0)}`
  if (withinRange) return `The adjustment reaches it (${range}).`
  const end = nearestInRange
    ? ` At its end, ${gridText(nearestInRange.setting)}, the hottest would have ${wattsText(nearestInRange.reached)}.`
    : ''
  return `The adjustment does not reach it (${range}).${end}`
}

function gridTrimText(trim: GridTrimOf, circuit: AmpCircuit, words: Words): string {
  const { sockets, targetPercent, targetWatts, nowVolts, mainsFactor, result } = trim
  const head = `Grid supply of ${socketList(sockets)}`
  if (!result.ok) return `${head}: ${trimFaultText(result.fault, words)}`
  const { setting } = result.value
  const step = setting - nowVolts
  const way =
    Math.abs(step) < 0.05
      ? 'as it stands'
      : `${Math.abs(step).toFixed(1)} V ${step < 0 ? 'colder' : 'hotter'} than ${gridText(nowVolts)}`
  const shown =
    Math.abs(mainsFactor - 1) > UNLIKE
      ? ` With ${(mainsFactor * circuit.markedMainsVolts).toFixed(1)} V at the wall a meter would show ${gridText(setting * mainsFactor)}.`
      : ''
  const hottest = sockets.length > 1 ? ' with the hottest of them' : ''
  return `${head}: for ${percentText(targetPercent)} (${wattsText(targetWatts)})${hottest} set ${gridText(setting)} at marked ${words.mains}, ${way}.${shown} ${rangeText(trim, circuit)}`
}

function resistorTrimText({ sockets, targetPercent, targetWatts, nowOhms, result }: ResistorTrimOf, words: Words) {
  const head = `Cathode resistor of ${socketList(sockets)}, ${resistanceText(nowOhms)}`
  if (!result.ok) return `${head}: ${trimFaultText(result.fault, words)}`
  const { exact, cooler, hotter } = result.value
  const hottest = sockets.length > 1 ? ' with the hottest of them' : ''
  return `${head}: for ${percentText(targetPercent)} (${wattsText(targetWatts)})${hottest} it would be ${resistanceText(exact.setting)}. Of the E24 series ${resistanceText(hotter.setting)} gives ${wattsText(hotter.reached)}, ${resistanceText(cooler.setting)} gives ${wattsText(cooler.reached)}.`
}

type Props = { readonly trims: readonly Trim[]; readonly circuit: AmpCircuit; readonly words: Words }

export function TrimList({ trims, circuit, words }: Props) {
  if (trims.length === 0) return null
  return (
    <ul>
      {trims.map((trim) => (
        <li key={trim.kind === 'grid' ? trim.supply : trim.resistor}>
          {trim.kind === 'grid' ? gridTrimText(trim, circuit, words) : resistorTrimText(trim, words)}
        </li>
      ))}
    </ul>
  )
}
