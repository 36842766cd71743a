/** One question with its answers as tiles; where a shape is meant, with its drawing. */
import { ChoiceDrawing, isDrawn } from '@/app/_components/tube-drawings/choice-drawing'
import { inWords } from '@/lib/domain/identify/identify-text'
import { choicesOf, choiceWord, OBSERVATIONS, type ObservationKey } from '@/lib/domain/identify/knowledge/observations'
import type { Seen } from '@/lib/domain/identify/seen'
import { capital, type Words } from '@/lib/domain/words'
import styles from './identify.module.css'
import { addressOf, CANNOT_TELL, forgotten } from './seen-query'

type Field = { readonly observation: ObservationKey; readonly seen: Seen; readonly words: Words }

type Tile = {
  readonly observation: ObservationKey
  readonly value: string
  readonly word: string
  readonly checked: boolean
}

function ChoiceTile({ observation, value, word, checked }: Tile) {
  return (
    <label className={styles.tile}>
      {isDrawn(observation) && value !== '' && value !== CANNOT_TELL && (
        <span className={observation === 'bulb' ? styles.tall : styles.square}>
          <ChoiceDrawing observation={observation} choice={value} />
        </span>
      )}
      <span className={styles.word}>
        <input type="radio" name={observation} value={value} defaultChecked={checked} />
        <span>{word}</span>
      </span>
    </label>
  )
}

export function ChoiceField({ observation, seen, words }: Field) {
  const { label, question } = OBSERVATIONS[observation]
  const chosen = seen.choices[observation] ?? (seen.skipped.includes(observation) ? CANNOT_TELL : '')
  const tiles = [
    ...choicesOf(observation).map((value) => ({
      value,
      word: capital(inWords(choiceWord(observation, value), words)),
    })),
    { value: CANNOT_TELL, word: 'Cannot be told' },
    { value: '', word: 'Not looked at' },
  ]
  return (
    <fieldset className={styles.question} id={`ask-${observation}`}>
      <legend>{inWords(label, words)}</legend>
      <p className="soft small">{inWords(question, words)}</p>
      <div className={isDrawn(observation) ? styles.pictures : styles.tiles}>
        {tiles.map(({ value, word }) => (
          <ChoiceTile key={value} {...{ observation, value, word }} checked={value === chosen} />
        ))}
      </div>
      {chosen !== '' && (
        <a className={`small ${styles.clear}`} href={addressOf(forgotten(seen, observation))}>
          Clear <span className="sr-only">{inWords(label, words)}</span>
        </a>
      )}
    </fieldset>
  )
}
