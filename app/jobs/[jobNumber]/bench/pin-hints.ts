/** Which pin each box of a socket is read at, where the handbook knows the base well enough to print it. */
import type { Socket } from '@/lib/domain/amp/socket'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'

export type PinHints = Readonly<Partial<Record<'plateVolts' | 'screenVolts' | 'cathodeVolts' | 'gridVolts', string>>>

/**
 * The electrode as the handbook writes it. Of a twin nothing is said, as there are two of
 * each; of a triode-pentode the pentode, where it stands in an output socket.
 */
const ELECTRODES = {
  plateVolts: /^a( pentode)?$/,
  screenVolts: /^g2( pentode)?$/,
  cathodeVolts: /^k( \+|$)/,
  gridVolts: /^g1?( pentode)?$/,
} as const

export function pinHints(
  { typeFitted, role }: Pick<Socket, 'typeFitted' | 'role'>,
  catalogue: TubeCatalogue,
): PinHints {
  const pins = Object.entries(findTubeType(typeFitted, catalogue)?.base.pins ?? {})
  if (role !== 'output' && pins.some(([, name]) => name.includes('triode'))) return {}
  return Object.fromEntries(
    Object.entries(ELECTRODES).flatMap(([box, electrode]) => {
      const at = pins.flatMap(([pin, name]) => (electrode.test(name) ? [pin] : []))
      return at.length === 0 ? [] : [[box, `${at.length === 1 ? 'pin' : 'pins'} ${at.join(' and ')}`]]
    }),
  )
}
