import type { State } from '@/lib/domain/identify/identify'
import { stateShape, stateWord } from '@/lib/domain/identify/identify-text'

const TONES: Readonly<Record<State, string>> = { consistent: 'good', contradictory: 'warn', unknown: 'plain' }

export function StateTag({ state }: { state: State }) {
  return (
    <span className="tag" data-tone={TONES[state]} data-shape={stateShape(state)}>
      {stateWord(state)}
    </span>
  )
}
