/** Where a tube is, or who has it: always a word, with a shape before it. */
import { activeHold, type Tube, whereaboutsWord } from '@/lib/domain/stock/tube'

type Standing = { readonly word: string; readonly shape: string; readonly tone?: string }

function standingOf(tube: Tube, now: Date): Standing {
  if (tube.whereabouts === 'fitted') return { word: 'fitted', shape: '◉' }
  if (tube.whereabouts !== 'in-stock') return { word: whereaboutsWord(tube.whereabouts), shape: '✕' }
  switch (activeHold(tube, now)) {
    case 'reserved':
      return { word: 'reserved', shape: '■', tone: 'warn' }
    case 'held':
      return { word: 'held', shape: '◧', tone: 'warn' }
    case '':
      return { word: 'free', shape: '○', tone: 'good' }
  }
}

export function PlaceTag({ tube, now }: { tube: Tube; now: Date }) {
  const { word, shape, tone } = standingOf(tube, now)
  return (
    <span className="tag" data-shape={shape} data-tone={tone}>
      {word}
    </span>
  )
}
