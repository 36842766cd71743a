import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { TubeBase } from '@/lib/domain/tube/tube-variant'
import type { SocketBase } from './chassis-pins'

const BASES: Record<TubeBase['name'], SocketBase> = {
  octal: 'octal',
  noval: 'noval',
  'miniature-7': 'miniature',
  novar: 'other',
  'four-pin': 'other',
}

/** From the type that sits in it; a type that is not known says nothing about its socket. */
export function socketBaseOf(typeFitted: string, catalogue: TubeCatalogue): SocketBase {
  const variant = findTubeType(typeFitted, catalogue)
  return variant ? BASES[variant.base.name] : 'other'
}

/** Types on the sheet that neither the handbook nor the shop knows, each once. */
export const unknownTypes = (types: readonly string[], catalogue: TubeCatalogue): readonly string[] =>
  [...new Set(types.map((type) => type.trim()))].filter((type) => type !== '' && findTubeType(type, catalogue) === null)
