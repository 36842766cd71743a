/** A designation in an input, looked up in the handbook. */
import { fail, ok, type Result } from '@/lib/domain/result'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import { type InputFault, shownValue } from './input-fault'

export function knownTube(designation: string, path: string): Result<TubeVariant, readonly [InputFault]> {
  const found = findTubeType(designation, HANDBOOK_ONLY)
  if (found) return ok(found)
  const sentence = `${path} is ${shownValue(designation)}; no type of that name is in the handbook here. "tube --list" prints those that are.`
  return fail([{ code: 'tube-not-known', path, sentence }])
}
