export function CautionList({ title, sentences }: { title: string; sentences: readonly string[] }) {
  if (sentences.length === 0) return null
  return (
    <div className="caution" role="status">
      <strong>{title}</strong>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </div>
  )
}
