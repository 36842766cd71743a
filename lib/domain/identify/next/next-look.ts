/**
 * The one thing to look at next: what is expected to take most from the uncertainty over the versions; when no
 * look settles more of those, over the years of the likeliest one. Null: nothing left here that would.
 */
import { OBSERVATION_KEYS, type ObservationKey } from '../knowledge/observations'
import type { Seen } from '../seen'
import type { Weighed } from '../weigh/weigh'
import type { NextLook } from './look'
import { printLook } from './print-look'
import { versionGroups } from './version-groups'
import { versionLook } from './version-look'
import { yearLooks } from './year-looks'

/** Below this a look is not worth the question. */
const LEAST_BITS = 0.1

const mostTelling = (looks: readonly NextLook[]): NextLook | null =>
  looks.filter(({ bits }) => bits >= LEAST_BITS).sort((a, b) => b.bits - a.bits)[0] ?? null

const openTo = (seen: Seen): ObservationKey[] =>
  OBSERVATION_KEYS.filter((key) => seen.choices[key] === undefined && !seen.skipped.includes(key))

const isOpen = (seen: Seen, key: 'print' | 'date'): boolean => seen[key].trim() === '' && !seen.skipped.includes(key)

export function nextLook(seen: Seen, weighed: Weighed): NextLook | null {
  const groups = versionGroups(weighed)
  const open = openTo(seen)
  const byEye = open.map((key) => versionLook(key, weighed, groups))
  const looks = isOpen(seen, 'print') ? [...byEye, printLook(groups)] : byEye
  return mostTelling(looks) ?? mostTelling(yearLooks(open, isOpen(seen, 'date'), weighed))
}
