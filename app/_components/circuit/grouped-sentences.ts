/** What is said alike of several sockets is said once: "each of V5 and V6" stands for the one. */
import { socketList } from '@/lib/domain/circuit/circuit-text'
import { capital } from '@/lib/domain/words'

export type SocketSentence = { readonly sentence: string /** '': of none in particular. */; readonly socket: string }

const HERE = '\u0000'

/** As a word of its own: V1 is not part of V10. */
const withoutName = ({ sentence, socket }: SocketSentence): string =>
  socket === ''
    ? sentence
    : sentence
        .split(/([\p{L}\p{N}-]+)/u)
        .map((part) => (part === socket ? HERE : part))
        .join('')

export function groupedSentences(sentences: readonly SocketSentence[]): string[] {
  const groups = new Map<string, Set<string>>()
  for (const one of sentences) {
    const bare = withoutName(one)
    groups.set(bare, (groups.get(bare) ?? new Set()).add(one.socket))
  }
  return [...groups].map(([bare, sockets]) => {
    const names = [...sockets]
    const text = bare.replaceAll(HERE, names.length > 1 ? `each of ${socketList(names)}` : (names[0] ?? ''))
    return bare.startsWith(HERE) ? capital(text) : text
  })
}
