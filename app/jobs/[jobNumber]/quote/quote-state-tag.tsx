/** A quote's state: a word and a shape. */
import { type QuoteState, quoteStateWord } from '@/lib/domain/quote/quote'

const SHAPES: Record<QuoteState, { shape: string; tone?: 'good' | 'warn' }> = {
  draft: { shape: '▷' },
  sent: { shape: '◇' },
  accepted: { shape: '●', tone: 'good' },
  declined: { shape: '▨', tone: 'warn' },
  superseded: { shape: '▫' },
  lapsed: { shape: '△', tone: 'warn' },
}

export function QuoteStateTag({ state }: { state: QuoteState }) {
  const { shape, tone } = SHAPES[state]
  return (
    <span className="tag" data-shape={shape} data-tone={tone}>
      {quoteStateWord(state)}
    </span>
  )
}
