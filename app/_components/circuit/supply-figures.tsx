/** What the change does around the tubes: supplies, wall, resistors. */
import type { WhatIf } from '@/lib/domain/circuit/change/what-if'
import type { Words } from '@/lib/domain/words'

type Row = {
  readonly name: string
  readonly now: number | null
  readonly changed: number | null
  readonly unit: string
  readonly decimals: number
}

function rowsOf(found: WhatIf, { mains, supply }: Words): Row[] {
  const volts = (name: string, pair: { now: number | null; changed: number | null }, decimals = 0): Row => ({
    name,
    ...pair,
    unit: 'V',
    decimals,
  })
  const { reservoirVolts, screenNodeVolts, supplyAmps, rectifierDropVolts, wallVolts, gridVolts, biasResistors } = found
  const milliamps = { now: 1000 * supplyAmps.now, changed: 1000 * supplyAmps.changed }
  return [
    volts('At the wall', wallVolts, 1),
    volts(`${supply} at the reservoir`, reservoirVolts),
    ...(screenNodeVolts.now === null ? [] : [volts('Screen supply', screenNodeVolts)]),
    { name: `Drawn from the ${supply} supply, all together`, ...milliamps, unit: 'mA', decimals: 0 },
    ...(rectifierDropVolts.now === 0 && rectifierDropVolts.changed === 0
      ? []
      : [volts('Lost in the rectifier', rectifierDropVolts)]),
    ...gridVolts.map((pair) => volts(`Grid supply, at marked ${mains}`, pair, 1)),
    ...biasResistors.flatMap(({ id, now, changed }): Row[] => [
      volts(`Across ${id}`, { now: now?.volts ?? null, changed: changed?.volts ?? null }, 1),
      { name: `Heat in ${id}`, now: now?.watts ?? null, changed: changed?.watts ?? null, unit: 'W', decimals: 2 },
    ]),
  ]
}

const shown = (value: number | null, { unit, decimals }: Row): string =>
  value === null ? '—' : `${value.toFixed(decimals).replace(/^-/, '\u2212')} ${unit}`

type Props = { readonly found: WhatIf; readonly changed: boolean; readonly words: Words }

export function SupplyFigures({ found, changed, words }: Props) {
  return (
    <div className="table-scroll">
      <table>
        <thead>
          <tr>
            <th>Around the {words.tubes}</th>
            <th className="num">now</th>
            {changed && <th className="num">then</th>}
          </tr>
        </thead>
        <tbody>
          {rowsOf(found, words).map((row) => (
            <tr key={row.name}>
              <th scope="row">{row.name}</th>
              <td className="num">{shown(row.now, row)}</td>
              {changed && <td className="num">{shown(row.changed, row)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
