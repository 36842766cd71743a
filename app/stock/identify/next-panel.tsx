/** The one thing to look at next. Its answers are links, so that one can walk from question to question. */
import { ChoiceDrawing } from '@/app/_components/tube-drawings/choice-drawing'
import { inWords, shareText } from '@/lib/domain/identify/identify-text'
import type { ObservationKey } from '@/lib/domain/identify/knowledge/observations'
import type { NextAnswer, NextLook } from '@/lib/domain/identify/next/look'
import type { Seen } from '@/lib/domain/identify/seen'
import { capital, type Words } from '@/lib/domain/words'
import styles from './identify.module.css'
import { addressOf, answered, cannotTell, hasSeen, placeOf } from './seen-query'

type Shown = { readonly next: NextLook | null; readonly seen: Seen; readonly words: Words }

const leadText = ({ leads, share }: NextAnswer): string => `${leads ?? 'none known here'}, ${shareText(share)}`

function AnswerWord({ next, answer, seen, words }: { next: NextLook; answer: NextAnswer; seen: Seen; words: Words }) {
  const word = capital(inWords(answer.word, words))
  if (next.key === 'print' || next.key === 'date') return <span>{word}</span>
  const key: ObservationKey = next.key
  return (
    <a className={styles.pick} href={addressOf(answered(seen, key, answer.choice))}>
      <span className={styles.small}>
        <ChoiceDrawing observation={key} choice={answer.choice} />
      </span>
      {word}
    </a>
  )
}

function Answers({ next, seen, words }: { next: NextLook; seen: Seen; words: Words }) {
  return (
    <table className={styles.answers}>
      <thead>
        <tr>
          <th>If you see</th>
          <th>then first comes</th>
        </tr>
      </thead>
      <tbody>
        {next.answers.map((answer) => (
          <tr key={answer.choice}>
            <th scope="row">
              <AnswerWord {...{ next, answer, seen, words }} />
            </th>
            <td>{leadText(answer)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** Before anything is told every number is as likely as any other, and a table of them would say nothing. */
const saysNothing = ({ key, answers }: NextLook): boolean => key === 'print' && (answers[0]?.chance ?? 0) < 0.1

export function NextPanel({ next, seen, words }: Shown) {
  if (!next)
    return hasSeen(seen) ? (
      <section className="panel">
        <h2>Nothing more to look at</h2>
        <p>No look that is known here would settle more. A test on the bench says whether it works.</p>
      </section>
    ) : null
  return (
    <section className="panel" aria-labelledby="next-head">
      <h2 id="next-head">Look at this next: {inWords(next.label, words).toLowerCase()}</h2>
      <p className={styles.asked}>{inWords(next.question, words)}</p>
      <p className="soft small">
        {next.settles === 'version'
          ? 'This settles most of what it can be'
          : 'What it is stands as far as looks can settle it; this settles most of the years'}{' '}
        ({next.bits.toFixed(1)} bits).
      </p>
      {!saysNothing(next) && <Answers next={next} seen={seen} words={words} />}
      <div className="row no-print">
        <a className="button quiet" href={placeOf(next.key)}>
          Answer below
        </a>
        <a className="button plain" href={addressOf(cannotTell(seen, next.key))}>
          Cannot be told
        </a>
      </div>
    </section>
  )
}
