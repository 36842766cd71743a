import { biasKindWord, type Socket } from '@/lib/domain/amp/socket'
import type { Words } from '@/lib/domain/words'

const ohms = (value: number | null, shared = 1) =>
  value === null ? '–' : `${value} Ω${shared > 1 ? `, shared by ${shared}` : ''}`

/** What readings of the output sockets are computed from. */
export function ValuesTable({ sockets, words }: { sockets: readonly Socket[]; words: Words }) {
  const outputs = sockets.filter(({ role }) => role === 'output')
  if (outputs.length === 0) return null
  return (
    <section className="panel table-scroll" aria-labelledby="values">
      <h2 id="values">Output {words.tubes}</h2>
      <table>
        <thead>
          <tr>
            <th>Socket</th>
            <th>Type</th>
            <th>Bias</th>
            <th>Side</th>
            <th>Match group</th>
            <th className="num">Cathode resistor</th>
            <th className="num">Sense resistor</th>
            <th className="num">Screen resistor</th>
            <th className="num">Half primary</th>
          </tr>
        </thead>
        <tbody>
          {outputs.map((socket) => (
            <tr key={socket.id}>
              <td>{socket.position}</td>
              <td>{socket.typeFitted || '–'}</td>
              <td>{biasKindWord(socket.biasKind) || 'not known yet'}</td>
              <td>{socket.side || '–'}</td>
              <td>{socket.matchGroup}</td>
              <td className="num">{ohms(socket.cathodeOhms, socket.cathodeSharedBy)}</td>
              <td className="num">{ohms(socket.senseOhms)}</td>
              <td className="num">{ohms(socket.screenOhms)}</td>
              <td className="num">{ohms(socket.halfPrimaryOhms, socket.halfSharedBy)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
