/** Sentences with where they come from. */
import type { Remark } from '@/lib/domain/identify/designation/designation-reading'
import { inWords, sourceText } from '@/lib/domain/identify/identify-text'
import type { Words } from '@/lib/domain/words'

export function RemarkList({ remarks, words }: { remarks: readonly Remark[]; words: Words }) {
  return (
    <ul className="tight">
      {remarks.map((remark) => (
        <li key={remark.sentence}>
          {inWords(remark.sentence, words)} <span className="soft small">({sourceText(remark)})</span>
        </li>
      ))}
    </ul>
  )
}
