/**
 * An etched type code ("Xf2", with or without its second line) is often written down where a
 * printed number is asked for. It is then read as the code it is; a number that names a type
 * known here stays a number.
 */
import { findTubeType } from '../../tube/find-tube-type'
import type { TubeCatalogue } from '../../tube/tube-catalogue'
import type { Seen } from '../seen'
import { readDateCode } from './date-code'

export function withEtchedPrint(seen: Seen, catalogue: TubeCatalogue): Seen {
  const isCode = readDateCode(seen.print).types.length > 0 && findTubeType(seen.print, catalogue) === null
  return isCode ? { ...seen, print: '', date: `${seen.print} ${seen.date}`.trim() } : seen
}
