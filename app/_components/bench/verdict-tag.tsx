import type { Verdict } from '@/lib/domain/bias/idle-verdict'

/** The shapes are those of the rings on the chassis drawing. */
const SHAPES: Record<Verdict, string> = { within: '◎', over: '▲', under: '▽', uncertain: '◌', 'no-rating': '○' }

export function VerdictTag({ verdict, word }: { verdict: Verdict; word: string }) {
  const tone = verdict === 'over' ? 'heat' : verdict === 'within' ? 'good' : undefined
  return (
    <span className="tag" data-shape={SHAPES[verdict]} data-tone={tone}>
      {word}
    </span>
  )
}
