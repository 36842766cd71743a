/**
 * Where a text stops being JSON (RFC 8259), or names one key twice.
 *
 * `JSON.parse` does not always say where it stopped, and of two equal keys it takes the
 * second without a word: on a bench that is a false reading. Nesting is bounded so that
 * no input can exhaust the stack.
 */
import { pathText } from './input-fault'

export type JsonTrouble =
  | { readonly kind: 'syntax'; readonly offset: number; readonly expected: string }
  | { readonly kind: 'key-twice'; readonly offset: number; readonly path: string }

type Path = readonly PropertyKey[]
type Trouble = JsonTrouble | null

const DEEPEST = 100
const SPACE = /[ \t\n\r]*/y
const STRING = /"(?:[^"\\\p{Cc}]|[\u007f-\u009f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/uy
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const WORD = /true|false|null/y

class Reader {
  private offset = 0
  constructor(private readonly text: string) {}

  /** The text matched here, moving past it. */
  private take(pattern: RegExp): string | null {
    pattern.lastIndex = this.offset
    const found = pattern.exec(this.text)?.[0] ?? null
    if (found !== null) this.offset += found.length
    return found
  }

  private takeMark(mark: string): boolean {
    this.take(SPACE)
    if (this.text[this.offset] !== mark) return false
    this.offset += 1
    return true
  }

  private expected(expected: string): JsonTrouble {
    return { kind: 'syntax', offset: this.offset, expected }
  }

  whole(): Trouble {
    const trouble = this.value([])
    if (trouble) return trouble
    this.take(SPACE)
    return this.offset < this.text.length ? this.expected('the end') : null
  }

  private value(path: Path): Trouble {
    if (path.length > DEEPEST) return this.expected(`no more than ${DEEPEST} levels`)
    if (this.takeMark('{')) return this.object(path)
    if (this.takeMark('[')) return this.list(path)
    const scalar = this.take(STRING) ?? this.take(NUMBER) ?? this.take(WORD)
    return scalar === null ? this.expected('a value') : null
  }

  private object(path: Path): Trouble {
    if (this.takeMark('}')) return null
    const seen = new Set<string>()
    do {
      this.take(SPACE)
      const start = this.offset
      const name = this.take(STRING)
      if (name === null) return this.expected('a name in double quotes')
      const key: string = JSON.parse(name)
      if (seen.has(key)) return { kind: 'key-twice', offset: start, path: pathText([...path, key]) }
      seen.add(key)
      if (!this.takeMark(':')) return this.expected('a colon')
      const trouble = this.value([...path, key])
      if (trouble) return trouble
    } while (this.takeMark(','))
    return this.takeMark('}') ? null : this.expected('a comma or }')
  }

  private list(path: Path): Trouble {
    if (this.takeMark(']')) return null
    let index = 0
    do {
      const trouble = this.value([...path, index])
      if (trouble) return trouble
      index += 1
    } while (this.takeMark(','))
    return this.takeMark(']') ? null : this.expected('a comma or ]')
  }
}

export const jsonTrouble = (text: string): JsonTrouble | null => new Reader(text).whole()

/** Both from 1; a column is a UTF-16 unit, as editors count. */
export function lineAndColumn(text: string, offset: number): { readonly line: number; readonly column: number } {
  const before = text.slice(0, offset).split(/\r\n|\n|\r/)
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 }
}
