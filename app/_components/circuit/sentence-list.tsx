/** Cautions or assumptions: each sentence once. */
type Props = { readonly title: string; readonly sentences: readonly string[]; readonly soft?: boolean }

export function SentenceList({ title, sentences, soft }: Props) {
  const once = [...new Set(sentences)]
  if (once.length === 0) return null
  return (
    <section>
      <h3>{title}</h3>
      <ul className={soft ? 'soft' : undefined}>
        {once.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  )
}
