/** What is known of the socket, and every type asked of it. */
import { AnswerTag } from '@/app/_components/substitution/answer-tag'
import { FindingsList } from '@/app/_components/substitution/findings-list'
import { dayInZone, formatDay } from '@/lib/domain/calendar'
import { formatMoney } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import type { AmpSocket } from '@/lib/domain/substitution/amp-socket'
import { type Substitute, substitute } from '@/lib/domain/substitution/substitute'
import { substitutesFor } from '@/lib/domain/substitution/substitutes'
import { READ_AFTER_FITTING } from '@/lib/domain/substitution/substitution-text'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { type Words, wordsFor } from '@/lib/domain/words'
import type { FreeStock } from '@/lib/store/free-stock'
import type { findKnownAmp } from '../../known-amp'
import type { Asked } from './asked'

type Known = NonNullable<Awaited<ReturnType<typeof findKnownAmp>>>
type Props = {
  readonly known: Known
  readonly asked: Asked
  readonly free: readonly FreeStock[]
  readonly shop: Shop
}

type Listed = { readonly answer: Substitute; readonly free: readonly FreeStock[] }

export function SocketAnswers({ known, asked, free, shop }: Props) {
  const words = wordsFor(shop.words)
  const listed = answers(asked, free, shop)
  const may = listed.filter(({ answer }) => answer.answer !== 'no')
  const not = listed.filter(({ answer }) => answer.answer === 'no')
  return (
    <>
      <SocketFacts socket={asked.socket} known={known} words={words} zone={shop.timeZone} />
      <div className="caution">
        <strong>Computed and looked up, not measured.</strong> {READ_AFTER_FITTING} Lethal voltage remains after
        unplugging; local codes and licensed practice come first.
      </div>
      {listed.length === 0 ? (
        <p className="form-message">{nothingText(asked, words)}</p>
      ) : (
        <>
          {may.length > 0 && <AnswerTable listed={may} shop={shop} />}
          {not.length > 0 && (
            <details open={may.length === 0}>
              <summary>{not.length === 1 ? 'One does not go in' : `${not.length} do not go in`}</summary>
              <AnswerTable listed={not} shop={shop} />
            </details>
          )}
        </>
      )}
    </>
  )
}

function AnswerTable({ listed, shop }: { listed: readonly Listed[]; shop: Shop }) {
  return (
    <div className="panel table-scroll">
      <table>
        <thead>
          <tr>
            <th>Type</th>
            <th>Answer</th>
            <th>Free in stock</th>
            <th>Why</th>
          </tr>
        </thead>
        <tbody>
          {listed.map((each) => (
            <AnswerRow key={each.answer.proposed.asked} {...each} shop={shop} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function AnswerRow({ answer, free, shop }: Listed & { shop: Shop }) {
  const { proposed, findings } = answer
  const { locale } = wordsFor(shop.words)
  return (
    <tr>
      <th scope="row">{proposed.asked}</th>
      <td>
        <AnswerTag answer={answer.answer} />
      </td>
      <td>
        {free.length === 0
          ? 'none'
          : free.map(({ designation, count, from }) => (
              <div key={designation}>
                {count} × {designation}, from {formatMoney(from, shop.currency, locale)}
              </div>
            ))}
      </td>
      <td>
        <FindingsList findings={findings} />
      </td>
    </tr>
  )
}

function answers({ socket, type, allowOver, onlyStock }: Asked, free: readonly FreeStock[], shop: Shop): Listed[] {
  const rules = { catalogue: shop, words: wordsFor(shop.words), allowOverPrintedRating: allowOver }
  const stocked = free.flatMap((each) => {
    const variant = findTubeType(each.designation, shop)
    return variant ? [{ each, variant }] : []
  })
  const inStock = ({ proposed }: Substitute) =>
    stocked
      .filter(({ variant }) => variant.typeId === proposed.typeId && variant.designation === proposed.designation)
      .map(({ each }) => each)
  const one = type === '' ? null : findTubeType(type, shop)
  const all = type === '' ? substitutesFor(socket, rules) : one ? [substitute(one, socket, rules)] : []
  return all.map((answer) => ({ answer, free: inStock(answer) })).filter((each) => !onlyStock || each.free.length > 0)
}

function nothingText({ type, onlyStock, socket }: Asked, words: Words): string {
  if (type !== '') return `${type} is not known here. Look it up, or write it down as a type of your own.`
  return onlyStock
    ? `Nothing free in stock goes by its kind and base into ${socket.position}. Untick the box to see every ${words.tube} type.`
    : `No ${words.tube} type of that kind and base is known here.`
}

type FactsProps = { socket: AmpSocket; known: Known; words: Words; zone: string }

function SocketFacts({ socket, known, words, zone }: FactsProps) {
  const { made, plateToCathode, screenToCathode } = socket
  const read = known.set ? formatDay(dayInZone(known.set.takenAt, zone), words.locale) : null
  const volts = [
    plateToCathode === null ? null : `${Math.round(plateToCathode)} V ${words.plate} to cathode`,
    screenToCathode === null ? null : `${Math.round(screenToCathode)} V screen to cathode`,
  ].filter((text) => text !== null)
  return (
    <p>
      {socket.position}: wired for {made.asked} ({made.base.name} base{made.base.eia ? `, ${made.base.eia}` : ''}).{' '}
      {volts.length === 0
        ? 'Its volts were not measured yet.'
        : `Measured ${read ? `on ${read}` : ''}: ${volts.join(', ')}${socket.count > 1 ? ', the highest of the group' : ''}.`}
    </p>
  )
}
