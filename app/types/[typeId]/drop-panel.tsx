/** A rectifier's drop by the model, at currents up to its rating. */
import { catalogueRectifier } from '@/lib/domain/model/catalogue-model'
import { diodeDrop } from '@/lib/domain/model/plate-curves'
import type { HandbookType } from '@/lib/domain/tube/handbook-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { Words } from '@/lib/domain/words'

type Props = { readonly type: HandbookType; readonly catalogue: TubeCatalogue; readonly words: Words }

const SHARES = [0.25, 0.5, 0.75, 1] as const

export function DropPanel({ type, catalogue, words }: Props) {
  const diode = catalogueRectifier(type.id, catalogue)
  const printed = type.rows.find(({ connection }) => connection === 'diode')?.figures.dropMilliampsPerPlate?.[0]
  if (!diode.ok || printed === undefined)
    return (
      <section className="panel">
        <h2>Drop</h2>
        <p className="soft">No drop is printed here, so none can be computed.</p>
      </section>
    )
  return (
    <section className="panel">
      <h2>Drop by current</h2>
      <table className="sheet">
        <caption>
          Per {words.plate}, direct current, by I = k·V^1.5 through its printed drop (Child–Langmuir). Ripple and the
          second {words.plate} come on top.
        </caption>
        <thead>
          <tr>
            <th>Current, mA</th>
            {SHARES.map((share) => (
              <th key={share} scope="col" className="num">
                {Number((share * printed).toPrecision(3))}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">Drop, V</th>
            {SHARES.map((share) => (
              <td key={share} className="num">
                {diodeDrop(diode.value, (share * printed) / 1000).drop.toFixed(1)}
              </td>
            ))}
          </tr>
        </tbody>
      </table>
    </section>
  )
}
