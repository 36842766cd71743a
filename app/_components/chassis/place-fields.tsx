/** The places as numbers: what the form sends, with or without a script. */
import styles from './chassis.module.css'
import type { ChassisSocketView } from './chassis-view'
import { readPlace, type TypedPlace, type TypedPlaces, typedPlace } from './socket-places'

type PlaceFieldsProps = {
  readonly fieldPrefix: string
  readonly sockets: readonly ChassisSocketView[]
  readonly places: TypedPlaces
  readonly onType: (id: string, field: keyof TypedPlace, text: string) => void
}

type PlaceFieldProps = {
  readonly name: string
  readonly label: string
  readonly text: string
  readonly onType: (text: string) => void
}

function PlaceField({ name, label, text, onType }: PlaceFieldProps) {
  const wrong = readPlace(text) === undefined
  return (
    <td>
      <input
        className={styles.placeField}
        name={name}
        aria-label={label}
        inputMode="decimal"
        autoComplete="off"
        size={5}
        maxLength={8}
        value={text}
        aria-invalid={wrong}
        aria-describedby={wrong ? `${name}-bounds` : undefined}
        onChange={(event) => onType(event.currentTarget.value)}
      />
      {wrong && <span id={`${name}-bounds`}> a number from 0 to 100, or empty</span>}
    </td>
  )
}

export function PlaceFields({ fieldPrefix, sockets, places, onType }: PlaceFieldsProps) {
  return (
    <table className={styles.table}>
      <caption>Across: 0 left, 100 right. Deep: 0 front, 100 rear. Both empty: automatic.</caption>
      <thead>
        <tr>
          <th scope="col">Position</th>
          <th scope="col">Across</th>
          <th scope="col">Deep</th>
        </tr>
      </thead>
      <tbody>
        {sockets.map((socket, index) => (
          <tr key={socket.id}>
            <th scope="row">{socket.position}</th>
            <PlaceField
              name={`${fieldPrefix}.${index}.across`}
              label={`${socket.position} across`}
              text={typedPlace(socket, places).across}
              onType={(text) => onType(socket.id, 'across', text)}
            />
            <PlaceField
              name={`${fieldPrefix}.${index}.depth`}
              label={`${socket.position} deep`}
              text={typedPlace(socket, places).depth}
              onType={(text) => onType(socket.id, 'depth', text)}
            />
          </tr>
        ))}
      </tbody>
    </table>
  )
}
