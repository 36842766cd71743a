import type { AmpSocket } from '@/lib/domain/substitution/amp-socket'
import { capital, type Words } from '@/lib/domain/words'
import type { Asked } from './asked'

type Props = {
  readonly ampId: string
  readonly sockets: readonly AmpSocket[]
  readonly asked: Asked
  readonly words: Words
}

/** A plain form: the answer is another address of this page, so it can be kept and sent. */
export function SocketPicker({ ampId, sockets, asked, words }: Props) {
  return (
    <form action={`/amps/${ampId}/substitutes`} className="panel stack no-print">
      <div className="fields">
        <div className="field">
          <label htmlFor="socket">Socket</label>
          <select id="socket" name="socket" defaultValue={asked.socket.position}>
            {sockets.map(({ position, made }) => (
              <option key={position} value={position}>
                {position}: {made.asked}
              </option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor="type">{capital(words.tube)} type</label>
          <input id="type" name="type" defaultValue={asked.type} placeholder="any" maxLength={40} />
        </div>
        <Tick name="stock" on={asked.onlyStock} label="Only what is free in stock" />
        <Tick name="over" on={asked.allowOver} label="Volts above the printed limit are a caution, not a refusal" />
      </div>
      <div className="row">
        <button type="submit" className="button">
          Look
        </button>
      </div>
    </form>
  )
}

const Tick = ({ name, on, label }: { name: string; on: boolean; label: string }) => (
  <div className="field field-check">
    <label>
      <input type="checkbox" name={name} defaultChecked={on} /> {label}
    </label>
  </div>
)
