/** Base, pins and heater. */
import type { HandbookType } from '@/lib/domain/tube/handbook-type'
import type { CardSources } from '@/lib/domain/tube/type-sources'
import { BaseDrawing } from './base-drawing'
import styles from './card.module.css'
import { FigureText, SourceMark } from './figure-text'

type Props = { readonly type: HandbookType; readonly sources: CardSources }

export function BasePanel({ type, sources }: Props) {
  const { base, heaters } = type
  return (
    <section className="panel">
      <h2>Base and heater</h2>
      <dl className="facts">
        <dt>Base</dt>
        <dd>
          {base.name}, basing {base.eia}
          <SourceMark source={base.eiaSource} sources={sources} />
        </dd>
        <dt>{heaters.length > 1 ? 'Heater, by its wiring' : 'Heater'}</dt>
        <dd>
          {heaters.map(({ volts, amps, use }) => (
            <div key={use ?? 'only'}>
              <FigureText figure={volts} unit="V" sources={sources} />,{' '}
              <FigureText figure={amps} unit="A" sources={sources} />
              {use && ` (${use})`}
            </div>
          ))}
        </dd>
      </dl>
      <Pins type={type} sources={sources} />
    </section>
  )
}

function Pins({ type: { base }, sources }: Props) {
  if (!base.pins)
    return <p className="soft">Pins are not known well enough to print. Look them up before anything is plugged in.</p>
  return (
    <div className={styles.pins}>
      <table className="sheet">
        <caption>
          Pins, seen from below, clockwise
          <SourceMark source={base.pinsSource} sources={sources} />
        </caption>
        <tbody>
          {Object.entries(base.pins).map(([pin, electrode]) => (
            <tr key={pin}>
              <th scope="row" className="num">
                {pin}
              </th>
              <td>{electrode}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <BaseDrawing base={base.name} pins={base.pins} />
    </div>
  )
}
