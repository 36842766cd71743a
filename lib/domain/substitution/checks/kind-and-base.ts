/** Whether it is the same sort of tube on the same sort of base. */
import type { TubeBase, TubeClass, TubeVariant } from '../../tube/tube-variant'
import type { Words } from '../../words'
import { type Finding, finding } from '../finding'

type Kind =
  | 'output tube with a screen'
  | 'output triode'
  | 'small-signal triode'
  | 'twin triode'
  | 'small-signal pentode'
  | 'triode-pentode'
  | 'rectifier'

const KIND: Readonly<Record<TubeClass, Kind>> = {
  'beam-tetrode': 'output tube with a screen',
  'power-pentode': 'output tube with a screen',
  'power-triode': 'output triode',
  'triode-pentode': 'triode-pentode',
  triode: 'small-signal triode',
  'twin-triode': 'twin triode',
  'signal-pentode': 'small-signal pentode',
  rectifier: 'rectifier',
}

const BASE_WORDS: Readonly<Record<TubeBase['name'], string>> = {
  octal: 'octal',
  noval: 'noval (9 pins)',
  'miniature-7': 'miniature (7 pins)',
  novar: 'novar (9 pins)',
  'four-pin': 'four pins',
}

const kindText = (kind: Kind, tube: string): string =>
  `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind.replace('tube', tube)}`

export function kindFindings(made: TubeVariant, proposed: TubeVariant, { tube }: Words): Finding[] {
  const [is, was] = [KIND[proposed.tubeClass], KIND[made.tubeClass]]
  if (is !== was)
    return [
      finding(
        'kind',
        'no',
        `${proposed.designation} is ${kindText(is, tube)}; the socket is wired for ${kindText(was, tube)}.`,
      ),
    ]
  return []
}

export function baseFindings(made: TubeVariant, proposed: TubeVariant): Finding[] {
  if (made.base.name === proposed.base.name) return []
  const [is, was] = [BASE_WORDS[proposed.base.name], BASE_WORDS[made.base.name]]
  return [finding('base', 'no', `${proposed.designation} has another base: ${is}, against ${was}.`)]
}
