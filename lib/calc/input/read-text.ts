/** The text of an input: a file, or the standard input for "-" and for nothing. */
import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { fail, ok, type Result } from '@/lib/domain/result'
import { type InputFault, shownValue } from './input-fault'

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'reading it is not allowed',
  ENOTDIR: 'a part of its path is no folder',
}

function fileFault(file: string, error: unknown): InputFault {
  const reason = error instanceof Error && 'code' in error ? String(error.code) : ''
  const code = reason === 'ENOENT' ? 'file-not-found' : 'file-not-readable'
  return {
    code,
    path: '',
    sentence: `The file ${shownValue(file)} cannot be read: ${REASONS[reason] ?? (reason || 'unknown reason')}.`,
  }
}

export type Surroundings = {
  /** Where file names start: npm runs a script in the project's folder, wherever it was called. */
  readonly folder: string
  /** The standard input is a terminal: nobody means to send JSON. */
  readonly terminal: boolean
  readonly readStandardInput: () => Promise<string>
}

export async function readText(file: string | null, around: Surroundings): Promise<Result<string, InputFault>> {
  const fromFile = file !== null && file !== '-'
  if (!fromFile && around.terminal) {
    return fail({
      code: 'no-input',
      path: '',
      sentence: 'No input: name a file, or send JSON to the standard input. --example prints one.',
    })
  }
  try {
    return ok(fromFile ? await readFile(resolve(around.folder, file), 'utf8') : await around.readStandardInput())
  } catch (error) {
    return fail(fileFault(file ?? '-', error))
  }
}
