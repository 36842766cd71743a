/** The tubes of the family that could not stand in a set: counted by reason, and the first of them one by one. */
import Link from 'next/link'
import { leftOutText } from '@/lib/domain/matching/left-out-text'
import { exclusionText, type MatchingFormat } from '@/lib/domain/matching/matching-text'
import type { Proposal } from '@/lib/domain/matching/proposal'
import { capital } from '@/lib/domain/words'

type Lost = Pick<Proposal, 'excluded' | 'leftOut'>

export function LostTubes({ lost: { excluded, leftOut }, format }: { lost: Lost; format: MatchingFormat }) {
  if (leftOut.tubes === 0) return null
  return (
    <details>
      <summary className="button plain">
        {capital(format.words.tubes)} that could not stand in a set ({leftOut.tubes})
      </summary>
      <p className="soft">{capital(leftOutText(leftOut, format.words))}.</p>
      <div className="table-scroll">
        <table>
          <thead>
            <tr>
              <th>Mark</th>
              <th>Type</th>
              <th>Why not</th>
            </tr>
          </thead>
          <tbody>
            {excluded.map(({ candidate, reasons }) => (
              <tr key={candidate.tubeId}>
                <td>
                  <Link href={`/stock/${candidate.tubeId}`}>{candidate.mark}</Link>
                </td>
                <td>{candidate.designation}</td>
                <td>{reasons.map((reason) => exclusionText(reason, format)).join(' ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {leftOut.tubes > excluded.length && (
        <p className="soft">And {leftOut.tubes - excluded.length} more; the stock list shows each with its test.</p>
      )}
    </details>
  )
}
