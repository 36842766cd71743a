/** A bottle as told in a test, and what came of it. */
import { expect } from 'vitest'
import { type Candidate, type Identification, identify } from '@/lib/domain/identify/identify'
import type { ObservationKey } from '@/lib/domain/identify/knowledge/observations'
import { NOTHING_SEEN, type OwnMaker, type Seen } from '@/lib/domain/identify/seen'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'

export type Choices = Partial<Record<ObservationKey, string>>

export const told = (seen: Partial<Seen>, makers: readonly OwnMaker[] = []): Identification =>
  identify({ ...NOTHING_SEEN, ...seen }, { makers, catalogue: HANDBOOK_ONLY, thisYear: 2025 })

export const candidate = (found: Identification, designation: string): Candidate =>
  found.ranked.find(({ version }) => version?.designation === designation) ??
  expect.fail(`${designation} is not among ${found.ranked.map(({ version }) => version?.designation).join(', ')}`)

export const leader = ({ ranked }: Identification): string | null | undefined => ranked[0]?.version?.designation

export const sentences = (found: Identification): string =>
  found.contradictions.map(({ sentence }) => sentence).join('\n')
