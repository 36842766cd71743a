/** Every tube of the family that is in no set shown, with its reasons; the first forty, as a stock can be long. */
import Link from 'next/link'
import { exclusionText, type MatchingFormat } from '@/lib/domain/matching/matching-text'
import type { Exclusion } from '@/lib/domain/matching/proposal'
import { capital } from '@/lib/domain/words'

const SHOWN = 40

export function LostTubes({ excluded, format }: { excluded: readonly Exclusion[]; format: MatchingFormat }) {
  if (excluded.length === 0) return null
  return (
    <details>
      <summary className="button plain">
        {capital(format.words.tubes)} that could not stand in a set ({excluded.length})
      </summary>
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
            {excluded.slice(0, SHOWN).map(({ candidate, reasons }) => (
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
      {excluded.length > SHOWN && (
        <p className="soft">And {excluded.length - SHOWN} more; the stock list shows each with its test.</p>
      )}
    </details>
  )
}
