/** The sheet, with what the bench found, as the drawing wants it. */
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { roleWord, type Socket } from '@/lib/domain/amp/socket'
import { socketBaseOf } from '@/lib/domain/amp/socket-base'
import type { BenchResult, SocketResult } from '@/lib/domain/bench/bench-result'
import { milliampsText, percentText, voltsText, wattsText } from '@/lib/domain/bias/bias-figures'
import { verdictWord } from '@/lib/domain/bias/bias-text'
import type { IdleResult } from '@/lib/domain/bias/idle'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { ChassisSocketView } from './chassis-view'

function idleView({
  plateAmps,
  plateWatts,
  platePercent,
  verdict,
}: IdleResult): Pick<ChassisSocketView, 'state' | 'stateWord' | 'readingLines' | 'percentOfRating' | 'limitPercent'> {
  const percent = platePercent ? ` · ${percentText(platePercent.value)} ±${Math.ceil(platePercent.plusMinus)}` : ''
  return {
    state: verdict.verdict === 'no-rating' ? 'uncertain' : verdict.verdict,
    stateWord: verdictWord(verdict.verdict).toLowerCase(),
    readingLines: [milliampsText(plateAmps.value), `${wattsText(plateWatts.value)}${percent}`],
    percentOfRating: platePercent?.value ?? null,
    limitPercent: 100 * verdict.window.high,
  }
}

function resultView(result: SocketResult | undefined) {
  const unread = { state: 'not-measured', stateWord: 'not measured', readingLines: [], percentOfRating: null } as const
  if (!result) return unread
  const { outcome, entry } = result
  if (outcome.kind === 'idle') return idleView(outcome.idle)
  if (outcome.kind === 'contradiction')
    return { ...unread, state: 'uncertain', stateWord: 'readings contradict' } as const
  const volts = entry.plateVolts === null ? [] : [voltsText(entry.plateVolts)]
  return { ...unread, stateWord: outcome.kind === 'noted' ? 'volts noted' : 'cannot say', readingLines: volts }
}

export function socketViews(
  sheet: AmpSheet,
  result: BenchResult | null,
  catalogue: TubeCatalogue,
  hrefOf?: (socket: Socket) => string,
): ChassisSocketView[] {
  const results = new Map(result?.sockets.map((each) => [each.socket.id, each]))
  return sheet.sockets.map((socket) => ({
    id: socket.id,
    position: socket.position,
    role: socket.role,
    roleWord: roleWord(socket.role),
    typeFitted: socket.typeFitted,
    base: socketBaseOf(socket.typeFitted, catalogue),
    across: socket.across,
    depth: socket.depth,
    mark: socket.markFitted || null,
    ...resultView(results.get(socket.id)),
    href: hrefOf?.(socket),
  }))
}
