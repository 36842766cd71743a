/** The drawing said in rows, for reading aloud, for print and for narrow screens. */
import styles from './chassis.module.css'
import { type AllChassisWords, type ChassisSocketView, typeOrNone } from './chassis-view'

type ChassisTableProps = {
  readonly title: string
  readonly sockets: readonly ChassisSocketView[]
  readonly words: AllChassisWords
}

/** No-break spaces and hyphens: a value stays with its unit and its ±. */
const unbroken = (text: string): string => text.replaceAll(' ', '\u00a0').replaceAll('-', '\u2011')
const unbrokenParts = (line: string): string => line.split(' · ').map(unbroken).join(' · ')

export function ChassisTable({ title, sockets, words }: ChassisTableProps) {
  return (
    <table className={styles.table}>
      <caption>{title}</caption>
      <thead>
        <tr>
          {[words.position, words.tube, words.role, words.state, words.reading].map((word) => (
            <th key={word} scope="col">
              {word}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {sockets.map((socket) => (
          <tr key={socket.id}>
            <th scope="row">{socket.href ? <a href={socket.href}>{socket.position}</a> : socket.position}</th>
            <td>
              {typeOrNone(socket, words)}
              {socket.mark ? ` (${unbroken(`${words.markWord} ${socket.mark}`)})` : ''}
            </td>
            <td>{socket.roleWord}</td>
            <td>{socket.stateWord}</td>
            <td>{socket.readingLines.length > 0 ? socket.readingLines.map(unbrokenParts).join(' · ') : '–'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
