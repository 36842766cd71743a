/** The last round before the work against the last one after it, a socket's two rows together. */

import { VerdictTag } from '@/app/_components/bench/verdict-tag'
import type { Banded } from '@/lib/domain/bias/banded'
import { percentText, voltsText, wattsText } from '@/lib/domain/bias/bias-figures'
import { verdictWord } from '@/lib/domain/bias/bias-text'
import type { IdleResult } from '@/lib/domain/bias/idle'
import { capital, type Words } from '@/lib/domain/words'
import type { WorkedRound } from '@/lib/workflow/work/safety-state'

type Props = { readonly before: WorkedRound | null; readonly after: WorkedRound | null; readonly words: Words }
type Row = { readonly position: string; readonly when: 'before' | 'after'; readonly idle: IdleResult | null }

export function BeforeAfter({ before, after, words }: Props) {
  const rows = rowsOf(before, after)
  if (rows.length === 0) return null
  return (
    <div className="table-scroll">
      <table>
        <thead>
          <tr>
            <th>Socket</th>
            <th>Read</th>
            <th>Type</th>
            <th className="num">{capital(words.plate)} to cathode</th>
            <th className="num">{capital(words.plate)} current</th>
            <th className="num">{capital(words.plate)} dissipation</th>
            <th className="num">Of the rating</th>
            <th>Verdict</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ position, when, idle }) => (
            <tr key={`${position} ${when}`}>
              <th scope="row">{position}</th>
              <td>{when}</td>
              {idle ? (
                <IdleCells idle={idle} />
              ) : (
                <td colSpan={6} className="soft">
                  cannot be worked out; see below
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function IdleCells({ idle }: { idle: IdleResult }) {
  return (
    <>
      <td>{idle.designation}</td>
      <td className="num">{voltsText(idle.plateToCathodeVolts.value)}</td>
      <td className="num">{bandText(idle.plateAmps, 1000, 'mA')}</td>
      <td className="num">{wattsText(idle.plateWatts.value)}</td>
      <td className="num">
        {idle.platePercent
          ? `${percentText(idle.platePercent.value)} ± ${Math.ceil(idle.platePercent.plusMinus)}`
          : 'no rating'}
      </td>
      <td>
        <VerdictTag verdict={idle.verdict.verdict} word={verdictWord(idle.verdict.verdict)} />
      </td>
    </>
  )
}

const bandText = ({ value, plusMinus }: Banded, scale: number, unit: string) =>
  `${(value * scale).toFixed(1)} ± ${(Math.ceil(plusMinus * scale * 10 - 1e-9) / 10).toFixed(1)} ${unit}`

function rowsOf(before: WorkedRound | null, after: WorkedRound | null): Row[] {
  const read = [before, after].flatMap((round) => round?.result.sockets.map(({ socket }) => socket) ?? [])
  const output = [
    ...new Map(read.filter(({ role }) => role === 'output').map((socket) => [socket.id, socket])).values(),
  ]
  return output
    .sort((a, b) => a.place - b.place)
    .flatMap(({ id, position }) => [...rowOf(before, id, position, 'before'), ...rowOf(after, id, position, 'after')])
}

function rowOf(round: WorkedRound | null, socketId: string, position: string, when: Row['when']): Row[] {
  const found = round?.result.sockets.find(({ socket }) => socket.id === socketId)
  return found ? [{ position, when, idle: found.outcome.kind === 'idle' ? found.outcome.idle : null }] : []
}
