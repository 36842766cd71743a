/** How the drawers stand for the parts on one job's quote. */
import { piecesByPart, shortText, withinReach } from './drawer'
import { partName, type StockedPart } from './part'

export type PartStanding = {
  readonly partId: string
  readonly name: string
  readonly location: string
  /** On all lines of the quote. */
  readonly needed: number
  /** Drawn by the job already, set aside for it, or free. */
  readonly there: number
  /** "2 needed, 1 free: order 1"; empty when there is enough. */
  readonly short: string
}

type DrawingLine = { readonly partId: string | null; readonly thousandths: number }

export type JobDraws = { readonly jobId: string; readonly drawn: ReadonlyMap<string, number> }

export const thereFor = ({ id, drawer }: StockedPart, { jobId, drawn }: JobDraws): number =>
  (drawn.get(id) ?? 0) + withinReach(drawer, jobId)

/** By part. */
export function partStandings(
  lines: readonly DrawingLine[],
  parts: readonly StockedPart[],
  job: JobDraws,
): Map<string, PartStanding> {
  const needs = piecesByPart(lines)
  return new Map(
    parts.flatMap((part) => {
      const needed = needs.get(part.id)
      if (needed === undefined) return []
      const there = thereFor(part, job)
      const { id: partId, location } = part
      return [[partId, { partId, name: partName(part), location, needed, there, short: shortText(needed, there) }]]
    }),
  )
}

export type PartLeftOver = { readonly partId: string; readonly name: string; readonly pieces: number }

/** Taken out of the drawer beyond what the ticked lines use, as after a revision. */
export function leftOver(
  lines: readonly (DrawingLine & { readonly doneAt: Date | null })[],
  parts: readonly StockedPart[],
  { drawn }: JobDraws,
): PartLeftOver[] {
  const used = piecesByPart(lines.filter(({ doneAt }) => doneAt !== null))
  return parts.flatMap((part) => {
    const pieces = (drawn.get(part.id) ?? 0) - (used.get(part.id) ?? 0)
    return pieces > 0 ? [{ partId: part.id, name: partName(part), pieces }] : []
  })
}
