/** The same in figures: the points, and the curves. */
import { milliampsText, voltsText, wattsText } from '@/lib/domain/bias/bias-figures'
import type { OperatingPoint } from '@/lib/domain/plot/operating-point'
import type { PlateSheet } from '@/lib/domain/plot/plate-sheet'
import { boxMilliampsText, boxVoltsText, gridText, pointName, tickText } from '@/lib/domain/plot/plot-text'
import { capital, type Words } from '@/lib/domain/words'

type TableProps = { readonly sheet: PlateSheet; readonly words: Words }

const grid = (volts: number | null): string | null =>
  volts === null ? null : `${volts.toFixed(1).replace('-', '−')} V`

export function PointsTable({ sheet, words }: TableProps) {
  return (
    <div className="table-scroll">
      <table>
        <caption className="small">
          The points, with their 95&nbsp;% boxes. Grid volts far from those of the curves speak of the {words.tube}, the
          meter or the circuit.
        </caption>
        <thead>
          <tr>
            <th>Socket</th>
            <th className="num">{capital(words.plate)} to cathode</th>
            <th className="num">{capital(words.plate)} current</th>
            <th className="num">Dissipation</th>
            <th className="num">Grid, read</th>
            <th className="num">Grid, by the curves</th>
          </tr>
        </thead>
        <tbody>
          {sheet.points.map((point) => (
            <PointRow key={pointName(point)} point={point} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function PointRow({ point }: { point: OperatingPoint }) {
  return (
    <tr>
      <th scope="row">{pointName(point)}</th>
      <td className="num">
        {voltsText(point.at.across)}
        <br />
        <span className="soft small">{boxVoltsText(point)}</span>
      </td>
      <td className="num">
        {point.estimate && <span className="soft small">about </span>}
        {milliampsText(point.at.up / 1000)}
        <br />
        <span className="soft small">{boxMilliampsText(point)}</span>
      </td>
      <td className="num">{wattsText(point.watts)}</td>
      <td className="num">{grid(point.gridVolts) ?? <span className="soft">not read</span>}</td>
      <td className="num">{grid(point.gridByCurves) ?? <span className="soft">none</span>}</td>
    </tr>
  )
}

export function CurvesTable({ sheet, words }: TableProps) {
  const { plateVolts, rows } = sheet.figures
  return (
    <div className="table-scroll">
      <table className="sheet">
        <caption>
          {capital(words.plate)} current of an average {sheet.designation}, mA, by the model
        </caption>
        <thead>
          <tr>
            <th>Grid</th>
            {plateVolts.map((volts) => (
              <th key={volts} scope="col" className="num">
                {tickText(volts)} V
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ gridVolts, milliamps }) => (
            <tr key={gridVolts}>
              <th scope="row" className="nowrap">
                {gridText(gridVolts)}
              </th>
              {milliamps.map((value, i) => (
                <td key={plateVolts[i]} className="num">
                  {value.toFixed(value < 9.95 ? 1 : 0)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
