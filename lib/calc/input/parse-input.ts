/** From the text of an input to the value it holds. */
import { fail, ok, type Result } from '@/lib/domain/result'
import type { InputFault } from './input-fault'
import { jsonTrouble, lineAndColumn } from './json-trouble'

const NO_NUMBER = /^[-+]?(?:NaN|Infinity)/

function foundText(text: string, offset: number): string {
  const rest = text.slice(offset)
  const word = NO_NUMBER.exec(rest)?.[0]
  if (word) return `${word}, which is no number in JSON`
  return rest === '' ? 'the end of the input' : JSON.stringify(String.fromCodePoint(rest.codePointAt(0) ?? 0))
}

export function parseInput(given: string): Result<unknown, InputFault> {
  const text = given.startsWith('\uFEFF') ? given.slice(1) : given
  if (text.trim() === '') {
    return fail({ code: 'input-empty', path: '', sentence: 'The input is empty; it must be one JSON object.' })
  }
  const trouble = jsonTrouble(text)
  if (!trouble) return ok(JSON.parse(text))
  const { line, column } = lineAndColumn(text, trouble.offset)
  const place = `Line ${line}, column ${column}`
  if (trouble.kind === 'key-twice') {
    const { path } = trouble
    return fail({ code: 'key-twice', path, sentence: `${place}: ${path} is given twice; give it once.`, line, column })
  }
  const sentence = `${place}: expected ${trouble.expected}, found ${foundText(text, trouble.offset)}. The input is no JSON.`
  return fail({ code: 'not-json', path: '', sentence, line, column })
}
