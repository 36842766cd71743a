/**
 * The curves of a tube type, ready for use, with what is known of their error.
 *
 * Some types stand under another number's curves. "same": electrically the same system
 * (from memory: 7189 is an EL84 with higher limits, 5992 a ruggedised 6V6, 7868 a 7591 on
 * another base; the units of the 12DW7 are one of a 12AX7 and one of a 12AU7). "similar": no usable rows of its own are
 * known and the nearest type stands in, with its error doubled.
 */
import { fail, ok, type Result } from '../result'
import type { FittedCurve } from './fitted-curve'
import { FITTED_CURVES, FITTED_DIODES, MODEL_ERRORS } from './fitted-parameters'
import type { DiodeParameters } from './plate-curves'

export type TypeModel = FittedCurve & {
  readonly typeId: string
  /** The type whose rows were fitted; equal to typeId for most. */
  readonly curvesOf: string
  readonly standIn: 'own' | 'same' | 'similar'
  /** Printed points of its own that a stand-in's curves were moved to; absent: none. */
  readonly movedTo?: number
  /** Standard deviation of ln Ia per unit of reach outside the fitted rows. */
  readonly growth: number
}

/** Sections other than the first: the triode of a triode-pentode, the second unit of an unlike twin. */
export type Section = 'first' | 'second'

type Origin = { readonly key: string; readonly curvesOf: string; readonly standIn: TypeModel['standIn'] }

const ORIGINS: Readonly<Record<string, Origin>> = {
  '7189': { key: 'EL84', curvesOf: 'EL84', standIn: 'same' },
  '5992': { key: '6V6', curvesOf: '6V6', standIn: 'same' },
  '7868': { key: '7591', curvesOf: '7591', standIn: 'same' },
  KT77: { key: 'EL34', curvesOf: 'EL34', standIn: 'similar' },
  '12DW7': { key: '12AX7', curvesOf: '12AX7', standIn: 'same' },
}
const SECOND_SECTIONS: Readonly<Record<string, Origin>> = {
  ECL82: { key: 'ECL82:triode', curvesOf: 'ECL82', standIn: 'own' },
  '12DW7': { key: '12AU7', curvesOf: '12AU7', standIn: 'same' },
}

function originOf(typeId: string, section: Section): Origin | null {
  const own: Origin = { key: typeId, curvesOf: typeId, standIn: 'own' }
  return section === 'second' ? (SECOND_SECTIONS[typeId] ?? null) : (ORIGINS[typeId] ?? own)
}

export function typeModel(typeId: string, section: Section = 'first'): Result<TypeModel, 'no-curves'> {
  const origin = originOf(typeId, section)
  const curve = origin && FITTED_CURVES[origin.key]
  if (!origin || !curve) return fail('no-curves')
  const share = origin.standIn === 'similar' ? curve.share * 2 : curve.share
  const { curvesOf, standIn } = origin
  return ok({ ...curve, share, typeId, curvesOf, standIn, growth: MODEL_ERRORS.growth })
}

/** One plate of a rectifier, from its one printed drop. */
export function rectifierModel(typeId: string): Result<DiodeParameters, 'no-curves'> {
  const diode = FITTED_DIODES[typeId]
  return diode ? ok(diode) : fail('no-curves')
}
