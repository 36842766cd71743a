/** The checks beside the idle: figure, limit, verdict, and what it was worked out by. */
import type { SideCheck, SideVerdict } from '@/lib/domain/circuit/side/side-check'
import { amountText, sideCheckText, sideVerdictWord } from '@/lib/domain/circuit/side/side-check-text'
import type { Words } from '@/lib/domain/words'

const SHAPES: Readonly<Record<SideVerdict, string>> = { ok: '◎', caution: '◌', over: '▲', 'cannot-say': '○' }
const TONES: Readonly<Record<SideVerdict, string | undefined>> = {
  ok: 'good',
  caution: undefined,
  over: 'warn',
  'cannot-say': undefined,
}

function CheckRow({ check, words }: { check: SideCheck; words: Words }) {
  const { title, sentence, formula } = sideCheckText(check, words)
  return (
    <tr>
      <th scope="row">{title}</th>
      <td>
        <span className="tag" data-shape={SHAPES[check.verdict]} data-tone={TONES[check.verdict]}>
          {sideVerdictWord(check.verdict)}
        </span>
      </td>
      <td className="num">{check.value ? amountText(check.value) : <span className="soft">—</span>}</td>
      <td className="num">{check.limit ? amountText(check.limit) : <span className="soft">—</span>}</td>
      <td>
        {sentence}
        <br />
        <span className="soft small">{formula}</span>
      </td>
    </tr>
  )
}

export function SideChecksTable({ checks, words }: { checks: readonly SideCheck[]; words: Words }) {
  return (
    <div className="table-scroll">
      <table>
        <thead>
          <tr>
            <th>Check</th>
            <th>Verdict</th>
            <th className="num">Figure</th>
            <th className="num">Limit</th>
            <th>Why</th>
          </tr>
        </thead>
        <tbody>
          {checks.map((check) => (
            <CheckRow key={`${check.name} ${check.part}`} check={check} words={words} />
          ))}
        </tbody>
      </table>
    </div>
  )
}
