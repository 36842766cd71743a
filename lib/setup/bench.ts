/**
 * `npm run -s bench [-- NAME]`: runs tests/bench/*.bench.ts, or the one named, and prints
 * one JSON line per figure. Anything else goes to the error stream. Fails when a bench
 * fails or a goal is missed; a figure that could not be measured is never printed.
 */
import { readdirSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'

export type Figure = {
  readonly figure: string
  readonly value: number
  readonly unit: string
  /** What the value is compared with, in the same unit; null when there is nothing to compare. */
  readonly reference: number | null
  /** Inclusive bound; null when the figure is only watched. */
  readonly goal: number | null
  readonly better: 'lower' | 'higher'
}

export type Bench = { readonly name: string; readonly run: () => Promise<readonly Figure[]> }

export function lineOf(bench: string, { figure, value, unit, reference, goal, better }: Figure): string {
  if (!Number.isFinite(value)) throw new Error(`${bench}: ${figure} is ${value} ${unit}, which is no measurement`)
  const ratio = reference === null || reference === 0 ? null : rounded(value / reference)
  const met = goal === null ? null : better === 'lower' ? value <= goal : value >= goal
  return JSON.stringify({ bench, figure, value: rounded(value), unit, reference, ratio, goal, met })
}

/** Four significant figures: more than any of these is repeatable to. */
const rounded = (value: number) => Number(value.toPrecision(4))

const folder = resolve(import.meta.dirname, '../../tests/bench')

async function found(): Promise<readonly Bench[]> {
  const files = readdirSync(folder).filter((file) => file.endsWith('.bench.ts'))
  return Promise.all(files.sort().map((file) => import(pathToFileURL(join(folder, file)).href) as Promise<Bench>))
}

async function benchAll(wanted: string | undefined): Promise<boolean> {
  const benches = await found()
  const chosen = benches.filter(({ name }) => wanted === undefined || name === wanted)
  if (chosen.length === 0) {
    console.error(`No bench is called "${wanted}". There are: ${benches.map(({ name }) => name).join(', ')}`)
    return false
  }
  let good = true
  for (const { name, run } of chosen) good = (await benchOne(name, run)) && good
  return good
}

async function benchOne(name: string, run: Bench['run']): Promise<boolean> {
  try {
    const lines = (await run()).map((figure) => lineOf(name, figure))
    for (const line of lines) console.log(line)
    return lines.length > 0 && lines.every((line) => JSON.parse(line).met !== false)
  } catch (error) {
    console.error(`${name} could not be measured:`, error)
    return false
  }
}

if (process.argv[1] === import.meta.filename) process.exitCode = (await benchAll(process.argv[2])) ? 0 : 1
