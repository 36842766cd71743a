/** The fitted table as the text of lib/domain/model/fitted-parameters.ts. */
import type { FittedTable } from './fit-all'

const HEAD = `/**
 * Fitted curve parameters. Written by \`npm run fit\` from the handbook rows; not edited by hand.
 *
 * SI: A/V^1.5 for p and k and for coldest and hottest, V² for kvb; see plate-curves.ts
 * and fitted-curve.ts.
 */
import type { FittedCurve, ModelErrors } from './fitted-curve'
import type { DiodeParameters } from './plate-curves'
`

type Value = string | number | boolean | object

const name = (key: string): string => (/^[A-Za-z_$][\w$]*$/.test(key) ? key : `'${key}'`)

function literal(value: Value, indent: string): string {
  if (typeof value === 'string') return `'${value}'`
  if (typeof value !== 'object') return String(value)
  const inner = `${indent}  `
  const lines = Object.entries(value).map(([key, one]) => `${inner}${name(key)}: ${literal(one as Value, inner)},\n`)
  return `{\n${lines.join('')}${indent}}`
}

export function parameterFile(table: FittedTable): string {
  return [
    HEAD,
    `export const MODEL_ERRORS: ModelErrors = ${literal(table.errors, '')}\n`,
    `export const FITTED_CURVES: Readonly<Record<string, FittedCurve>> = ${literal(table.curves, '')}\n`,
    `export const FITTED_DIODES: Readonly<Record<string, DiodeParameters>> = ${literal(table.diodes, '')}\n`,
  ].join('\n')
}
