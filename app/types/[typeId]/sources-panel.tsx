import type { CardSources } from '@/lib/domain/tube/type-sources'

export function SourcesPanel({ sources, notes }: { sources: CardSources; notes: readonly string[] }) {
  return (
    <section className="panel">
      <h2>Notes and sources</h2>
      {notes.length > 0 && (
        <ul>
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      <p className="soft">The small number beside a figure says where it comes from.</p>
      <ol>
        {sources.list.map(({ number, text }) => (
          <li key={number}>{text}</li>
        ))}
      </ol>
    </section>
  )
}
