/** Imports that the server was stopped in the middle of: rows of them lie in stock, and somebody has to say what with them. */
import Link from 'next/link'
import { type CutShort, cutShortText } from '@/lib/workflow/tables/import-standing'

export function CutShortNotice({ cut }: { cut: readonly CutShort[] }) {
  if (cut.length === 0) return null
  return (
    <div className="caution no-print">
      <h2>A list was cut short</h2>
      <ul className="tight">
        {cut.map((one) => (
          <li key={one.import.id}>
            {cutShortText(one)}{' '}
            <Link href={`/stock/exchange/${one.import.id}`}>{one.canGoOn ? 'Go on or undo it' : 'Undo it'}</Link>
          </li>
        ))}
      </ul>
    </div>
  )
}
