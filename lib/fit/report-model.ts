/**
 * npm run -s report:model
 *
 * Errors of the fitted curves against the printed rows, per curve: rows that were fitted,
 * each row predicted from the others, and rows put aside for good. Then the goals.
 */
import { FITTED_CURVES, MODEL_ERRORS } from '@/lib/domain/model/fitted-parameters'
import { DOUBTFUL } from './doubtful-rows'
import { goalOutcomes, reasonFor } from './goals'
import { rowName } from './put-aside'
import { allRowErrors, type RowErrors } from './row-errors'

const cell = (error: number | null): string =>
  (error === null ? '-' : `${error >= 0 ? '+' : ''}${error.toFixed(1)}`).padStart(8)

function line(one: RowErrors): string {
  const { row } = one
  const point = `${row.plate.toFixed(0)}/${row.screen.toFixed(0)}/${row.grid.toFixed(1)} V ${(row.ia * 1000).toFixed(1)} mA`
  const unforgiven =
    one.iaAtPrintedGrid === null ? '' : `  (resistor given; at its grid volts ${cell(one.iaAtPrintedGrid).trim()})`
  const cells = [one.ia, one.ig2, one.gm, one.rp].map(cell).join('')
  return `  ${one.role.padEnd(10)}${cells}   ${row.label}: ${point}${unforgiven}`
}

function curveReport(key: string, errors: readonly RowErrors[]): string {
  const curve = FITTED_CURVES[key]
  if (!curve) return `${key}: not in the parameter file; run npm run fit`
  const cutoff = curve.cutoffKnown ? '' : '; cutoff not fixed by its rows, wider band'
  const head = `${key}: ${curve.rows} rows fitted, model error ${(curve.share * 100).toFixed(1)} %${cutoff}`
  const doubts = errors.flatMap((one) => {
    const reason = one.role === 'doubtful' ? DOUBTFUL.get(rowName(one.row)) : undefined
    return reason ? [`  doubtful: ${one.row.label}: ${reason}`] : []
  })
  return [head, ...errors.map(line), ...doubts].join('\n')
}

function summary(errors: readonly RowErrors[]): string {
  const lines = goalOutcomes(errors).flatMap((one) => [
    `${one.met ? 'met   ' : 'MISSED'}  ${one.goal}: ${one.reached.toFixed(1)} % of ${one.limit} %, ${one.rows} figures`,
    ...one.beyond.map((row) => `          ${row.role} ${rowName(row.row)}: ${reasonFor(row)}`),
  ])
  return lines.join('\n')
}

const errors = allRowErrors()
console.log('Errors in per cent of the printed figure.')
console.log(`  ${''.padEnd(10)}${['Ia', 'Ig2', 'gm', 'rp'].map((name) => name.padStart(8)).join('')}`)
for (const [key, rows] of errors) console.log(`\n${curveReport(key, rows)}`)
console.log(`\nGoals\n${summary([...errors.values()].flat())}`)
console.log(
  `\nModel error over all output types, inside the fitted rows: ${(MODEL_ERRORS.pooledShare * 100).toFixed(1)} %; ` +
    `outside, ${(MODEL_ERRORS.growth * 100).toFixed(0)} % per factor e.`,
)
