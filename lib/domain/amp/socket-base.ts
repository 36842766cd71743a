import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { TubeBase } from '@/lib/domain/tube/tube-variant'
import type { SocketBase } from './chassis-pins'

const BASES: Record<TubeBase['name'], SocketBase> = {
  octal: 'octal',
  noval: 'noval',
  'miniature-7': 'miniature',
  novar: 'other',
  'four-pin': 'other',
}

/** From the type that sits in it; a type the handbook does not know says nothing about its socket. */
export function socketBaseOf(typeFitted: string): SocketBase {
  const variant = findTubeType(typeFitted)
  return variant ? BASES[variant.base.name] : 'other'
}

/** Types on the sheet that the handbook does not know, each once. */
export const unknownTypes = (types: readonly string[]): readonly string[] =>
  [...new Set(types.map((type) => type.trim()))].filter((type) => type !== '' && findTubeType(type) === null)
