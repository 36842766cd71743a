/**
 * Another rectifier: its drop, its printed limits, and when its supply comes up.
 *
 * Drop by the three-halves law from one printed point per type (rectifier models), at the
 * current read in this amplifier. A directly heated filament conducts long before the other
 * cathodes are warm; so does one without a cathode sleeve (common practice, no source).
 */
import { catalogueRectifier } from '../../model/catalogue-model'
import { diodeDrop } from '../../model/plate-curves'
import type { TubeCatalogue } from '../../tube/tube-catalogue'
import type { TubeVariant } from '../../tube/tube-variant'
import type { Words } from '../../words'
import type { AmpSocket, SubstitutionRules } from '../amp-socket'
import { readPin } from '../electrodes'
import { type Finding, finding } from '../finding'

const NEAR_VOLTS = 3

const hasCathode = ({ base }: TubeVariant): boolean =>
  Object.values(base.pins ?? {}).some((pin) => readPin(pin).some(({ electrode }) => electrode === 'cathode'))

function drop(variant: TubeVariant, current: number, catalogue: TubeCatalogue): number | null {
  const diode = catalogueRectifier(variant.typeId, catalogue)
  return diode.ok ? diodeDrop(diode.value, current).drop : null
}

export function rectifierFindings(
  proposed: TubeVariant,
  socket: AmpSocket,
  { catalogue, words }: SubstitutionRules,
): Finding[] {
  if (proposed.role !== 'rectifier') return []
  return [
    ...dropFindings(proposed, socket, { catalogue, words }),
    ...outputFindings(proposed, socket),
    ...reservoirFindings(proposed, socket),
    ...warmUpFindings(proposed, socket, words),
  ]
}

type Known = Pick<SubstitutionRules, 'catalogue' | 'words'>

function dropFindings(
  proposed: TubeVariant,
  { made, supplyCurrent }: AmpSocket,
  { catalogue, words }: Known,
): Finding[] {
  if (proposed.typeId === made.typeId) return []
  if (supplyCurrent === null)
    return [
      finding(
        'rectifier',
        'cannot-say',
        'The current it would carry was not read: how far the supply would rise or fall cannot be said.',
      ),
    ]
  const [was, is] = [drop(made, supplyCurrent, catalogue), drop(proposed, supplyCurrent, catalogue)]
  if (was === null || is === null)
    return [finding('rectifier', 'cannot-say', 'No drop is known for one of the two types.')]
  const rise = was - is
  const carried = `At ${Math.round(1000 * supplyCurrent)} mA it drops about ${Math.round(is)} V, against ${Math.round(was)} V`
  if (Math.abs(rise) < NEAR_VOLTS) return [finding('rectifier', 'fits', `${carried}: the supply stays as it is.`)]
  const higher = rise > 0 ? `, and check capacitor and ${words.tube} ratings at the higher volts` : ''
  const sentence = `${carried}: the supply ${rise > 0 ? 'rises' : 'falls'} by about ${Math.round(Math.abs(rise))} V. Set the idle again${higher}.`
  return [finding('rectifier', 'adjust', sentence)]
}

function outputFindings({ ratings, designation }: TubeVariant, { supplyCurrent }: AmpSocket): Finding[] {
  const limit = ratings?.all.outputMilliamps
  if (!limit || supplyCurrent === null) return []
  const drawn = 1000 * supplyCurrent
  return drawn > limit.value
    ? [
        finding(
          'rectifier',
          'no',
          `The amplifier draws ${Math.round(drawn)} mA at idle; ${designation} may give ${limit.value} mA.`,
        ),
      ]
    : []
}

function reservoirFindings({ ratings, designation }: TubeVariant, { reservoirMicrofarads }: AmpSocket): Finding[] {
  const limit = ratings?.all.reservoirMicrofarads
  if (!limit) return [finding('rectifier', 'note', `No limit of the reservoir is known for ${designation}.`)]
  if (reservoirMicrofarads === null)
    return [finding('rectifier', 'note', `The reservoir may be ${limit.value} µF; the amplifier’s is not noted.`)]
  return reservoirMicrofarads > limit.value
    ? [
        finding(
          'rectifier',
          'change',
          `The reservoir is ${reservoirMicrofarads} µF; ${designation} may have ${limit.value} µF. A smaller one is needed.`,
        ),
      ]
    : [finding('rectifier', 'fits', `Reservoir ${reservoirMicrofarads} µF, of ${limit.value} µF.`)]
}

function warmUpFindings(proposed: TubeVariant, { made }: AmpSocket, { tubes }: Words): Finding[] {
  if (hasCathode(proposed) || !hasCathode(made)) return []
  return [
    finding(
      'rectifier',
      'note',
      `It is directly heated: full supply voltage stands on the capacitors before the other ${tubes} are warm.`,
    ),
  ]
}
