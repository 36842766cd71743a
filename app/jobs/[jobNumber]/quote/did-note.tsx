/** What has just been done, told once at the head of the page. */
import type { Words } from '@/lib/domain/words'

const sentences = ({ tubes }: Words): Readonly<Record<string, string>> => ({
  kept: 'The draft is kept.',
  mail: 'The quote is out. Where its mail is stands below.',
  'hand-over': 'The quote is out, to be handed over.',
  accepted: `The yes is written down. The ${tubes} on it, if any, are reserved.`,
  declined: 'The no is written down. Nothing is held any more.',
  undone: 'The answer is taken back. The quote waits again.',
})

type Props = { readonly did: string; readonly paperId: string | null; readonly words: Words }

export function DidNote({ did, paperId, words }: Props) {
  const sentence = sentences(words)[did]
  if (!sentence) return null
  return (
    <p className="form-message" data-status="saved" role="status">
      {sentence} {did === 'hand-over' && paperId && <a href={`/papers/${paperId}`}>Print the quote</a>}
    </p>
  )
}
