/** The load the handbook prints for the substitute, against the transformer that is there. */
import { handbookRows } from '../../tube/handbook-rows'
import type { TubeVariant } from '../../tube/tube-variant'
import type { AmpSocket, SubstitutionRules } from '../amp-socket'
import { type Finding, finding } from '../finding'

/** Beyond this factor a load is another one: shop rule, no source. */
const FAR = 1.5

export function loadFindings(
  proposed: TubeVariant,
  socket: AmpSocket,
  { catalogue, words }: SubstitutionRules,
): Finding[] {
  const { plateLoad, made, count } = socket
  if (proposed.role !== 'output' || proposed.typeId === made.typeId || plateLoad === null) return []
  const key = count === 1 ? 'loadKilohms' : 'plateToPlateKilohms'
  const printed = handbookRows(proposed.typeId, catalogue).flatMap(({ figures }) => figures[key]?.[0] ?? [])
  // Parallel pairs halve the load of a pair.
  const ohms = printed.map((kilohms) => (1000 * kilohms) / (count > 2 ? count / 2 : 1))
  if (ohms.length === 0) return []
  const [least, most] = [Math.min(...ohms), Math.max(...ohms)]
  if (plateLoad >= least / FAR && plateLoad <= most * FAR) return []
  const range = least === most ? `${Math.round(least)} Ω` : `${Math.round(least)} to ${Math.round(most)} Ω`
  return [
    finding(
      'load',
      'note',
      `The handbook gives it a load of ${range}; this transformer presents ${Math.round(plateLoad)} Ω. Power and distortion will differ, and the ${plateLoad < least ? `${words.plate}s run hotter under drive` : 'screens run hotter under drive'}.`,
    ),
  ]
}
