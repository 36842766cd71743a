/** Heater volts must be the same to 5 %; more current must be within what the winding gives. */
import type { Heater, TubeVariant } from '../../tube/tube-variant'
import type { AmpSocket } from '../amp-socket'
import { type Finding, finding } from '../finding'

const SAME_VOLTS = 0.05
/** Within the spread of tubes and windings: common practice, no source. */
const SAME_AMPS = 0.02
const SLIGHTLY_MORE = 0.1

const figure = (value: number): string => String(Number(value.toPrecision(3)))

function together(made: TubeVariant, proposed: TubeVariant): { was: Heater; is: Heater }[] {
  return made.heaters.flatMap((was) =>
    proposed.heaters
      .filter((is) => Math.abs(is.volts.value / was.volts.value - 1) <= SAME_VOLTS && is.use === was.use)
      .map((is) => ({ was, is })),
  )
}

/** The same connection first: a centre-tapped heater can be wired two ways, and both must be offered. */
export function heaterFindings(made: TubeVariant, proposed: TubeVariant, socket: AmpSocket): Finding[] {
  const pairs = together(made, proposed)
  const [first] = pairs
  if (!first) {
    const volts = (heaters: readonly Heater[]) =>
      heaters.map(({ volts: { value } }) => `${figure(value)} V`).join(' or ')
    const sentence = `Its heater wants ${volts(proposed.heaters)}${tapWord(proposed)}; the socket gives ${volts(made.heaters)}${tapWord(made)}.`
    return [finding('heater', 'no', sentence)]
  }
  const more = first.is.amps.value - first.was.amps.value
  if (more <= SAME_AMPS * first.was.amps.value) return [finding('heater', 'fits', heaterText(first.is))]
  const slightly = more <= SLIGHTLY_MORE * first.was.amps.value
  return [moreCurrent(more, first.is, socket, slightly)]
}

const tapWord = ({ heaters }: TubeVariant): string =>
  heaters.some(({ use }) => use?.includes('9')) ? ' (centre-tapped)' : ''

const heaterText = ({ volts, amps }: Heater): string =>
  `Heater ${figure(volts.value)} V, ${figure(amps.value)} A: no more than before.`

function moreCurrent(more: number, { amps }: Heater, { heaterWinding, count }: AmpSocket, slightly: boolean): Finding {
  const each = `Its heater draws ${figure(amps.value)} A, ${figure(more)} A more than the type the socket was made for`
  const all = count > 1 ? `, ${figure(more * count)} A for ${count}` : ''
  if (!heaterWinding && slightly) return finding('heater', 'note', `${each}${all}.`)
  if (!heaterWinding) {
    return finding(
      'heater',
      'cannot-say',
      `${each}${all}. What the winding may give is not noted: check the transformer first.`,
    )
  }
  const { limit, drawn } = heaterWinding
  const needed = drawn + more * count
  const budget = `The winding gives ${figure(limit)} A and would carry ${figure(needed)} A`
  return needed <= limit
    ? finding('heater', 'note', `${each}${all}. ${budget}.`)
    : finding('heater', 'change', `${each}${all}. ${budget}: it needs another heater supply.`)
}
