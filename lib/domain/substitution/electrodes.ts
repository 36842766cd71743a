/**
 * Electrodes at each pin, read from the words of a base drawing: "k + beam plates",
 * "a (unit 2)", "nc / ic". An octal shell and a pin that is absent carry nothing.
 */
export type Electrode =
  | 'plate'
  | 'screen'
  | 'grid'
  | 'suppressor'
  | 'beam plates'
  | 'cathode'
  | 'heater'
  | 'heater centre tap'
  | 'shield'
  | 'shell'
  | 'internal'

/** Which section of a twin or a triode-pentode; the only one is "". */
export type PinElectrode = { readonly electrode: Electrode; readonly section: string }

const WORDS: readonly (readonly [RegExp, Electrode])[] = [
  [/heater centre tap/, 'heater centre tap'],
  [/beam plates/, 'beam plates'],
  [/\bg2\b/, 'screen'],
  [/\bg3\b/, 'suppressor'],
  [/\bg1?\b/, 'grid'],
  [/\ba\b/, 'plate'],
  [/\bk\b/, 'cathode'],
  [/\b[hf][+-]?(?=$|\s)/, 'heater'],
  [/shield/, 'shield'],
  [/shell|sleeve/, 'shell'],
  [/\bic\b/, 'internal'],
]

const sectionOf = (text: string): string => /unit \d|triode/.exec(text)?.[0] ?? ''

function electrodesOf(part: string): readonly PinElectrode[] {
  const found = WORDS.find(([word]) => word.test(part))
  return found ? [{ electrode: found[1], section: sectionOf(part) }] : []
}

/** Empty for a pin with nothing on it. */
export const readPin = (text: string | undefined): readonly PinElectrode[] =>
  (text ?? '').split(/\s*[+/]\s*/).flatMap(electrodesOf)

/** Those that carry current or set a potential, against those that only have to be left alone. */
const WORKING: ReadonlySet<Electrode> = new Set([
  'plate',
  'screen',
  'grid',
  'suppressor',
  'beam plates',
  'cathode',
  'heater',
  'heater centre tap',
])
export const isWorking = ({ electrode }: PinElectrode): boolean => WORKING.has(electrode)
