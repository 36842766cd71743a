/** The chassis with what goes where, and a line for each tube to tick when it is in. */

import Link from 'next/link'
import { ChassisDrawing } from '@/app/_components/chassis/chassis-drawing'
import type { ChassisSocketView } from '@/app/_components/chassis/chassis-view'
import { chassisWords } from '@/app/_components/chassis/chassis-words'
import { socketViews } from '@/app/_components/chassis/socket-views'
import { type AmpSheet, ampName } from '@/lib/domain/amp/amp'
import { formatInstant } from '@/lib/domain/calendar'
import { exchangedText } from '@/lib/domain/quote/exchanged'
import type { Shop } from '@/lib/domain/shop/shop'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { capital, wordsFor } from '@/lib/domain/words'
import { PressForm } from '../press-form'
import { exchangeAddress } from '../tubes/exchange/exchange-address'
import { pressFitted } from './actions'
import type { TubeOrder } from './tube-orders'

type Props = {
  readonly orders: readonly TubeOrder[]
  readonly sheet: AmpSheet
  readonly jobNumber: string
  readonly shop: Shop
  readonly may: boolean
}

export function TubesToFit({ orders, sheet, jobNumber, shop, may }: Props) {
  const words = wordsFor(shop.words)
  if (orders.length === 0) return null
  return (
    <section className="panel stack" aria-labelledby="tubes-to-fit">
      <h2 id="tubes-to-fit">{capital(words.tubes)} to fit</h2>
      <ChassisDrawing
        title={ampName(sheet.amp)}
        titleLines={[`job ${jobNumber}, what goes where`]}
        sockets={orderedViews(sheet, orders, shop)}
        words={chassisWords(words)}
      />
      <div className="table-scroll">
        <table>
          <thead>
            <tr>
              <th>Socket</th>
              <th>{capital(words.tube)} to fit</th>
              <th>Lies in</th>
              <th>Sits there now</th>
              <th>Fitted</th>
              {may && <th className="no-print">Tick</th>}
            </tr>
          </thead>
          <tbody>
            {orders.map((order) => (
              <OrderRow key={order.position} order={order} jobNumber={jobNumber} shop={shop} may={may} />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  )
}

function OrderRow({ order, jobNumber, shop, may }: { order: TubeOrder; jobNumber: string; shop: Shop; may: boolean }) {
  const { position, mark, type, condition, location, now, instead, fitted, lost } = order
  const words = wordsFor(shop.words)
  const action = pressFitted.bind(null, { jobNumber, position, fitted: fitted === null })
  return (
    <tr>
      <th scope="row">{position}</th>
      <td>
        <strong>{mark}</strong> {type}
        <br />
        <span className="soft small">{condition}</span>
        {instead && (
          <>
            <br />
            <span className="soft small">{exchangedText(instead, fitted ? 'fitted' : 'to fit')}</span>
          </>
        )}
      </td>
      <td>{location || <span className="soft">not noted</span>}</td>
      <td>{lost ? 'socket is not on the sheet any more' : now || <span className="soft">nothing noted</span>}</td>
      <td>
        <span className="tag" data-shape={fitted ? '●' : '○'} data-tone={fitted ? 'good' : undefined}>
          {fitted ? 'fitted' : 'to fit'}
        </span>
        {fitted && (
          <span className="soft small">
            {' '}
            {fitted.by}, {formatInstant(fitted.at, shop.timeZone, words.locale)}
          </span>
        )}
      </td>
      {may && (
        <td className="no-print">
          <PressForm action={action} quiet={fitted !== null}>
            {fitted ? 'Take out again' : 'Fitted'}
            <span className="sr-only">
              {' '}
              {mark} in {position}
            </span>
          </PressForm>
          {!fitted && !lost && (
            <Link className="button plain" href={exchangeAddress(jobNumber, { position, mark: '', work: true })}>
              Exchange this {words.tube}
              <span className="sr-only">
                : {mark} for {position}
              </span>
            </Link>
          )}
        </td>
      )}
    </tr>
  )
}

function orderedViews(sheet: AmpSheet, orders: readonly TubeOrder[], catalogue: TubeCatalogue): ChassisSocketView[] {
  return socketViews(sheet, null, catalogue).map((view) => {
    const order = orders.find(({ position }) => position === view.position)
    if (!order) return { ...view, stateWord: 'stays' }
    return order.fitted
      ? { ...view, stateWord: 'fitted' }
      : { ...view, stateWord: `fit ${order.mark}`, readingLines: order.type === view.typeFitted ? [] : [order.type] }
  })
}
