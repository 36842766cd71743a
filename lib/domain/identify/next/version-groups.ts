/** The cases of one version together, whatever the service; "none known here" is one more. */
import type { Version } from '../version'
import type { Weighed } from '../weigh/weigh'

export type VersionGroups = {
  readonly versions: readonly (Version | null)[]
  readonly shares: readonly number[]
  /** Adds up what is given for each case. */
  readonly gathered: (perCase: readonly number[]) => number[]
}

export function versionGroups({ cases, caseShares }: Weighed): VersionGroups {
  const place = new Map<string | null, number>()
  const versions: (Version | null)[] = []
  const groupOf = cases.map(({ version }) => {
    const name = version?.designation ?? null
    const known = place.get(name)
    if (known !== undefined) return known
    place.set(name, versions.length)
    return versions.push(version) - 1
  })
  const gathered = (perCase: readonly number[]) => {
    const parts = versions.map(() => 0)
    for (const [at, value] of perCase.entries()) {
      const group = groupOf[at] ?? 0
      parts[group] = (parts[group] ?? 0) + value
    }
    return parts
  }
  return { versions, gathered, shares: gathered(caseShares) }
}

export function leadingVersion({ versions }: VersionGroups, parts: readonly number[]) {
  const total = parts.reduce((sum, part) => sum + part, 0)
  const best = parts.reduce((most, part, at) => (part > (parts[most] ?? 0) ? at : most), 0)
  return { leads: versions[best]?.designation ?? null, share: total > 0 ? (parts[best] ?? 0) / total : 0 }
}
