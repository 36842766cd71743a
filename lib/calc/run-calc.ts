/** One command line, from its arguments to what is written and the exit code. */
import { ok, type Result } from '@/lib/domain/result'
import type { Calculator, Faults } from './calculator'
import { type CalculatorName, isCalculator, loadCalculator, SUMMARIES } from './calculators'
import { type InputFault, shownValue } from './input/input-fault'
import { parseInput } from './input/parse-input'
import { readText, type Surroundings } from './input/read-text'

export type Outcome = { readonly code: 0 | 2; readonly stdout: string; readonly stderr: string }

const HELP = `npm run -s calc -- NAME [FILE|-]      JSON in (a file or the standard input), JSON out
npm run -s calc -- tube DESIGNATION…  without JSON
npm run -s calc -- tube --list        designations of the handbook

NAME
${Object.entries(SUMMARIES)
  .map(([name, summary]) => `  ${name.padEnd(10)} ${summary}`)
  .join('\n')}

  --schema   JSON Schema of the input (2020-12)
  --example  an input to start from
  --help     this

Exit 0: the answer is on the standard output. Exit 2: the input was refused; {code, path, sentence}
is on the error stream, with "more" when there is more to mend.`

const text = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`
const answered = (value: unknown): Outcome => ({ code: 0, stdout: text(value), stderr: '' })
const help: Outcome = { code: 0, stdout: `${HELP}\n`, stderr: '' }

function refused([first, ...more]: Faults): Outcome {
  return { code: 2, stdout: '', stderr: text(more.length > 0 ? { ...first, more } : first) }
}

const usage = (code: string, sentence: string): Outcome => refused([{ code, path: '', sentence }])

const outcome = (result: Result<unknown, Faults>): Outcome =>
  result.ok ? answered(result.value) : refused(result.fault)

const isFile = (argument: string): boolean => argument === '-' || /\.json$/i.test(argument)

async function answerText(calculator: Calculator, file: string | null, around: Surroundings): Promise<Outcome> {
  const read = await readText(file, around)
  if (!read.ok) return refused([read.fault])
  const parsed = parseInput(read.value)
  return parsed.ok ? outcome(calculator.answer(parsed.value)) : refused([parsed.fault])
}

/** One designation answers as its JSON does; several answer as a list, or with every fault. */
function answerNames(tube: Calculator, names: readonly string[]): Outcome {
  const results = names.map((designation) => tube.answer({ designation }))
  const faults: InputFault[] = results.flatMap((one) => (one.ok ? [] : [...one.fault]))
  const [first, ...more] = faults
  if (first) return refused([first, ...more])
  const cards = results.flatMap((one) => (one.ok ? [one.value] : []))
  return outcome(ok(cards.length === 1 ? cards[0] : cards))
}

async function answerOption(name: CalculatorName, calculator: Calculator, option: string): Promise<Outcome> {
  if (option === '--schema') return answered(calculator.schema())
  if (option === '--example') return answered(calculator.example)
  if (option === '--list' && name === 'tube') return answered((await import('./tube/tube')).tubeList())
  return usage('unknown-option', `${option} is no option of ${name}; there are --schema, --example, --help.`)
}

async function answerArguments(
  name: CalculatorName,
  calculator: Calculator,
  rest: readonly string[],
  around: Surroundings,
): Promise<Outcome> {
  const [first = null, second] = rest
  if (name === 'tube' && first !== null && !rest.some(isFile)) return answerNames(calculator, rest)
  if (second === undefined) return answerText(calculator, first, around)
  return usage('too-many-arguments', `${shownValue(second)} is one argument too many; ${name} takes at most one file.`)
}

export async function runCalc(args: readonly string[], around: Surroundings): Promise<Outcome> {
  const [name, ...rest] = args
  if (name === undefined || args.includes('--help') || args.includes('-h')) return help
  if (!isCalculator(name)) {
    const names = Object.keys(SUMMARIES).join(', ')
    return usage('unknown-calculator', `${shownValue(name)} is no calculator; it must be one of ${names}.`)
  }
  const calculator = await loadCalculator(name)
  const option = rest.find((one) => one.startsWith('-') && one !== '-')
  return option === undefined ? answerArguments(name, calculator, rest, around) : answerOption(name, calculator, option)
}
