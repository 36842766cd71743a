/** The print taken apart: what each piece says, and the date codes. */
import type { Identification } from '@/lib/domain/identify/identify'
import { inWords, sourceText } from '@/lib/domain/identify/identify-text'
import type { Words } from '@/lib/domain/words'

export function PrintTaken({ found, words }: { found: Identification; words: Words }) {
  const { readings, codes } = found
  if (readings.length + codes.readings.length + codes.types.length + codes.unread.length === 0) return null
  return (
    <section className="panel" aria-labelledby="taken-head">
      <h2 id="taken-head">What the marks say</h2>
      {readings.map(({ asked, standard, parts }) => (
        <div key={`${asked} ${standard}`}>
          <h3>{standard ?? asked}</h3>
          <ul className="tight">
            {parts.map((part) => (
              <li key={`${part.text} ${part.meaning}`}>
                <strong>{part.text}</strong>: {inWords(part.meaning, words)}{' '}
                <span className="soft small">({sourceText(part)})</span>
              </li>
            ))}
          </ul>
        </div>
      ))}
      {[...codes.types, ...codes.readings].map((code) => (
        <p key={code.sentence}>
          {code.sentence} <span className="soft small">({sourceText(code)})</span>
        </p>
      ))}
      {codes.unread.length > 0 && <p>Not read as a date code: {codes.unread.join(', ')}. It weighs nothing.</p>}
    </section>
  )
}
