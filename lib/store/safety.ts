/** Signed safety lines of a job. A line is written when it is signed, and not before. */
import type { Prisma } from '@/generated/sqlite/client'
import { isCheckId, type Outcome } from '@/lib/domain/safety/check'
import type { SafetyLine, SettledLine } from '@/lib/domain/safety/safety-line'
import { db, type Tx } from './database'

const columns = {
  id: true,
  check: true,
  outcome: true,
  value: true,
  valueText: true,
  limitText: true,
  instrument: true,
  calibratedOn: true,
  reason: true,
  signedBy: true,
  signedAt: true,
  version: true,
} satisfies Prisma.SafetyLineSelect

type Row = Prisma.SafetyLineGetPayload<{ select: typeof columns }>

/** Nothing for a line nobody has signed, and for a check that is not asked any more. */
function line({ check, outcome, signedAt, ...row }: Row): SafetyLine[] {
  if (outcome === '' || signedAt === null || !isCheckId(check)) return []
  return [{ ...row, check, outcome: outcome as Outcome, signedAt }]
}

export async function listSafetyLines(jobId: string, tx: Tx = db()): Promise<SafetyLine[]> {
  const rows = await tx.safetyLine.findMany({ where: { jobId }, select: columns })
  return rows.flatMap(line)
}

export type Signed = SettledLine & { readonly signedBy: string; readonly signedAt: Date }

/** Null when somebody signed it meanwhile. `version` 0: nobody has signed it yet. Gives the id. */
export async function saveSafetyLine(
  tx: Tx,
  { jobId, check, version }: { readonly jobId: string; readonly check: string; readonly version: number },
  signed: Signed,
): Promise<string | null> {
  const there = await tx.safetyLine.findUnique({
    where: { jobId_check: { jobId, check } },
    select: { id: true, version: true },
  })
  if ((there?.version ?? 0) !== version) return null
  if (!there) return (await tx.safetyLine.create({ data: { ...signed, jobId, check }, select: { id: true } })).id
  const { count } = await tx.safetyLine.updateMany({
    where: { id: there.id, version },
    data: { ...signed, version: version + 1 },
  })
  return count === 1 ? there.id : null
}
