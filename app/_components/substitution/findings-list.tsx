/** Why a substitute may or may not go in: what decides it, and the rest folded away. */
import { type Finding, WEIGHTS } from '@/lib/domain/substitution/finding'

const WEIGHT_WORDS: Readonly<Record<Finding['weight'], string>> = {
  no: 'Against it',
  change: 'To change',
  'cannot-say': 'Not known',
  adjust: 'To set',
  note: 'Mind',
  fits: 'Fits',
}

const Line = ({ weight, sentence }: Finding) => (
  <li>
    <strong>{WEIGHT_WORDS[weight]}:</strong> {sentence}
  </li>
)

/** What forbids it needs nothing beside it; else everything that is to be done or minded is told. */
const decides = ({ weight }: Finding, worst: Finding['weight']): boolean =>
  worst === 'no' ? weight === 'no' : WEIGHTS.indexOf(weight) > WEIGHTS.indexOf('fits')

export function FindingsList({ findings }: { findings: readonly Finding[] }) {
  const worst = findings[0]?.weight ?? 'fits'
  const told = findings.filter((one) => decides(one, worst))
  const rest = findings.filter((one) => !told.includes(one))
  return (
    <>
      {told.length > 0 && (
        <ul className="tight">
          {told.map((one) => (
            <Line key={one.sentence} {...one} />
          ))}
        </ul>
      )}
      {rest.length > 0 && (
        <details>
          <summary>
            {worst === 'no' ? 'What else was looked at' : 'What fits'} ({rest.length})
          </summary>
          <ul>
            {rest.map((one) => (
              <Line key={one.sentence} {...one} />
            ))}
          </ul>
        </details>
      )}
    </>
  )
}
