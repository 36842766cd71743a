/**
 * One question with its answers as tiles; where a shape is meant, with its drawing. Folded on a narrow screen, with what
 * was answered in the line that stays; beside the answer, on a wide one, always open.
 */
import { ChoiceDrawing, isDrawn } from '@/app/_components/tube-drawings/choice-drawing'
import { inWords } from '@/lib/domain/identify/identify-text'
import { choicesOf, choiceWord, OBSERVATIONS, type ObservationKey } from '@/lib/domain/identify/knowledge/observations'
import type { Seen } from '@/lib/domain/identify/seen'
import { capital, type Words } from '@/lib/domain/words'
import styles from './identify.module.css'
import { addressOf, CANNOT_TELL, forgotten } from './seen-query'

type Field = {
  readonly observation: ObservationKey
  readonly seen: Seen
  readonly words: Words
  /** What to look at next: unfolded. */
  readonly isNext: boolean
}

type Tile = { readonly value: string; readonly word: string; readonly checked: boolean; readonly drawn: boolean }

function ChoiceTile({ observation, value, word, checked, drawn }: Tile & Pick<Field, 'observation'>) {
  return (
    <label className={drawn ? styles.picture : styles.tile}>
      {drawn && (
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

const CANNOT_TELL_WORD = 'Cannot be told'
const NOT_LOOKED_WORD = 'Not looked at'

function chosenWord({ observation, words }: Field, chosen: string): string {
  if (chosen === '') return NOT_LOOKED_WORD.toLowerCase()
  return chosen === CANNOT_TELL ? CANNOT_TELL_WORD.toLowerCase() : inWords(choiceWord(observation, chosen), words)
}

function Tiles({ observation, words, chosen }: Field & { chosen: string }) {
  const drawn = isDrawn(observation)
  const shapes = choicesOf(observation).map((value) => ({
    ...{ value, drawn, checked: value === chosen },
    word: capital(inWords(choiceWord(observation, value), words)),
  }))
  const others = [
    { value: CANNOT_TELL, word: CANNOT_TELL_WORD, drawn: false, checked: chosen === CANNOT_TELL },
    { value: '', word: NOT_LOOKED_WORD, drawn: false, checked: chosen === '' },
  ]
  const tile = (one: Tile) => <ChoiceTile key={one.value} observation={observation} {...one} />
  return (
    <>
      {drawn && <div className={styles.pictures}>{shapes.map(tile)}</div>}
      <div className={styles.tiles}>{(drawn ? others : [...shapes, ...others]).map(tile)}</div>
    </>
  )
}

export function ChoiceField(field: Field) {
  const { observation, seen, words, isNext } = field
  const { label, question } = OBSERVATIONS[observation]
  const chosen = seen.choices[observation] ?? (seen.skipped.includes(observation) ? CANNOT_TELL : '')
  const name = inWords(label, words)
  return (
    <details className={styles.group} open={isNext || undefined} data-next={isNext || undefined}>
      <summary className={styles.head}>
        <span className={styles.label}>{name}</span>{' '}
        <span className={chosen ? '' : 'soft'}>{chosenWord(field, chosen)}</span>
      </summary>
      <fieldset className={styles.answersOf} id={`ask-${observation}`}>
        <legend className="sr-only">{name}</legend>
        <p className="soft small">{inWords(question, words)}</p>
        <Tiles {...field} chosen={chosen} />
        {chosen !== '' && (
          <a className={`small ${styles.clear}`} href={addressOf(forgotten(seen, observation))}>
            Clear <span className="sr-only">{name}</span>
          </a>
        )}
      </fieldset>
    </details>
  )
}
