/** What has just been done, told once at the head of the page. */
const SENTENCES: Readonly<Record<string, string>> = {
  kept: 'The draft is kept.',
  mail: 'The quote is out. Where its mail is stands below.',
  'hand-over': 'The quote is out, to be handed over.',
  accepted: 'The yes is written down and the tubes are reserved.',
  declined: 'The no is written down. Nothing is held any more.',
  undone: 'The answer is taken back. The quote waits again.',
}

export function DidNote({ did, paperId }: { did: string; paperId: string | null }) {
  const sentence = SENTENCES[did]
  if (!sentence) return null
  return (
    <p className="form-message" data-status="saved" role="status">
      {sentence} {did === 'hand-over' && paperId && <a href={`/papers/${paperId}`}>Print the quote</a>}
    </p>
  )
}
