/** The changes a bench asks of any amplifier: mains 10 % up and down, each tube pulled, other rectifiers of the same base. */

import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { rectifierNamed } from '@/lib/domain/circuit/amp/rectifier-of'
import { ok, type Result } from '@/lib/domain/result'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { knownTypes } from '@/lib/domain/tube/tube-catalogue'
import { baseCautions, heaterCautions } from './cautions/tube-cautions'
import type { Change } from './change'
import type { WhatIfFault } from './changed-circuit'
import { compared, solvedChange, type WhatIf } from './what-if'

type Kind =
  | { readonly kind: 'mains-high' | 'mains-low'; readonly percent: number }
  | { readonly kind: 'pulled'; readonly socket: string }
  /** '' is solid state. */
  | { readonly kind: 'rectifier'; readonly designation: string }

export type Effect = Kind & { readonly change: Change; readonly result: Result<WhatIf, WhatIfFault> }

/** Of the marked voltage. Amplifiers marked 110 to 117 V now meet 120 to 125 V (common practice, no source). */
const MAINS_PERCENT = 10

type Asked = Kind & { readonly change: Change }

function pulls({ sockets }: AmpCircuit): Asked[] {
  if (sockets.length < 2) return []
  return sockets.map(({ position }) => ({ kind: 'pulled', socket: position, change: { pulled: position } }))
}

/** Same base, same electrodes, heater of the same volts; none where a tube rectifier's drop is not known. */
export function rectifiersFor(circuit: AmpCircuit): readonly string[] {
  const { variant, diode, designation, tubes } = circuit.rectifier
  if (designation === '' || !variant || !diode) return []
  const others = knownTypes(circuit).filter(({ role, id }) => role === 'rectifier' && id !== variant.typeId)
  const fitting = others.flatMap(({ variants }) => {
    const name = variants[0]?.designations[0]
    const other = name === undefined ? null : findTubeType(name, circuit)
    if (!name || !other || !rectifierNamed(name, tubes, circuit)) return []
    const volts = heaterCautions('', other, variant).some(({ code }) => code === 'heater-volts-differ')
    return volts || baseCautions('', other, variant).length > 0 ? [] : [name]
  })
  return [...fitting, '']
}

function asked(circuit: AmpCircuit): Asked[] {
  const percent = MAINS_PERCENT
  return [
    { kind: 'mains-high', percent, change: { mainsFactor: 1 + percent / 100 } },
    { kind: 'mains-low', percent, change: { mainsFactor: 1 - percent / 100 } },
    ...pulls(circuit),
    ...rectifiersFor(circuit).map(
      (designation): Asked => ({ kind: 'rectifier', designation, change: { rectifier: designation } }),
    ),
  ]
}

export function standardEffects(circuit: AmpCircuit): readonly Effect[] {
  const now = solvedChange(circuit, {})
  return asked(circuit).map((one) => {
    if (!now.ok) return { ...one, result: now }
    const then = solvedChange(circuit, one.change)
    return { ...one, result: then.ok ? ok(compared(circuit, now.value, then.value, one.change)) : then }
  })
}
