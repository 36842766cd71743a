/** One line of the sign-off: what is asked, the limit, what was signed, and the form to sign it. */
import type { Option } from '@/app/_components/form/form-fields'
import { formatDay, formatInstant } from '@/lib/domain/calendar'
import { outcomeWord } from '@/lib/domain/safety/check'
import type { GateLine } from '@/lib/domain/safety/release-gate'
import type { SafetyLine as SignedLine } from '@/lib/domain/safety/safety-line'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { submitLine } from './actions'
import { LineForm } from './line-form'
import styles from './safety.module.css'

const TAGS = {
  open: { shape: '○', word: 'open', tone: undefined },
  pass: { shape: '✓', word: 'pass', tone: 'good' },
  fail: { shape: '✕', word: 'fails', tone: 'warn' },
  'not-tested': { shape: '–', word: 'not tested', tone: undefined },
  outdated: { shape: '!', word: 'sign again', tone: 'warn' },
} as const

type Props = {
  readonly gate: GateLine
  readonly place: number
  readonly jobNumber: string
  readonly instruments: readonly Option[]
  /** What the readings say of this line, if they say anything. */
  readonly evidence: string | null
  readonly shop: Shop
  readonly may: boolean
}

export function SafetyLine({ gate, place, jobNumber, instruments, evidence, shop, may }: Props) {
  const { check, line, outdated } = gate
  const state = outdated ? 'outdated' : (line?.outcome ?? 'open')
  const { shape, word, tone } = TAGS[state]
  return (
    <li className={styles.line} data-state={state} id={`line-${check.id}`}>
      <div className={styles.head}>
        <h3>
          {place}. {check.name}
        </h3>
        <span className="tag" data-shape={shape} data-tone={tone}>
          {word}
        </span>
      </div>
      <p className={styles.limit}>
        Limit: {check.limitText} <span className="soft small">({check.basis})</span>
      </p>
      <p>{check.sentence}</p>
      {check.doesNotApply && <p className="soft">Cannot be tested here, {check.doesNotApply}.</p>}
      {evidence && <p className="soft">{evidence}</p>}
      {outdated && (
        <p className="form-message" data-status="refused">
          This signature no longer counts: {outdated}.
        </p>
      )}
      {line && <Record line={line} shop={shop} />}
      {may && (
        <LineForm
          action={submitLine.bind(null, { jobNumber, checkId: check.id })}
          check={check}
          instruments={instruments}
          version={line?.version ?? 0}
          again={line !== null}
        />
      )}
    </li>
  )
}

function Record({ line, shop }: { line: SignedLine; shop: Shop }) {
  const { locale } = wordsFor(shop.words)
  const { outcome, valueText, limitText, instrument, calibratedOn, reason, signedBy, signedAt } = line
  const calibrated = calibratedOn ? `, calibrated ${formatDay(calibratedOn, locale)}` : ', calibration date not known'
  return (
    <dl className={styles.record}>
      <dt>Signed</dt>
      <dd>
        <strong>{outcomeWord(outcome)}</strong>, {signedBy}, {formatInstant(signedAt, shop.timeZone, locale)}
      </dd>
      {valueText !== '' && (
        <Fact name="Value" text={line.value === null ? valueText : `${valueText} (limit: ${limitText})`} />
      )}
      {instrument !== '' && <Fact name="Instrument" text={instrument + calibrated} />}
      {reason !== '' && <Fact name="Reason" text={reason} />}
    </dl>
  )
}

const Fact = ({ name, text }: { name: string; text: string }) => (
  <>
    <dt>{name}</dt>
    <dd>{text}</dd>
  </>
)
