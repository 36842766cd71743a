/**
 * What a column of a table of tubes can mean, the heading the shop's own export
 * gives it, and the headings other lists are known to give it: bench words,
 * common practice, no source. Guesses are compared folded: letters and digits only.
 */
import { SEEN, SEEN_NAMES, type SeenName } from '../domain/stock/tube-further'

export type TubeColumn =
  | 'mark'
  | 'designation'
  | 'condition'
  | 'acquired'
  | 'construction'
  | 'location'
  | 'cost'
  | 'price'
  | 'whereabouts'
  | 'used'
  | 'cosmetics'
  | 'box'
  | SeenName
  | 'warranty'
  | 'warrantyUntil'
  | 'hoursBefore'
  | 'setName'
  | 'reference'
  | 'day'
  | 'testedBy'
  | 'instrumentName'
  | 'calibratedOn'
  | 'plateVolts'
  | 'screenVolts'
  | 'gridVolts'
  | 'plateMilliamps'
  | 'gm'
  | 'gmMicromhos'
  | 'screenMilliamps'
  | 'secondPlateMilliamps'
  | 'secondGm'
  | 'shorts'
  | 'leakage'
  | 'gas'
  | 'noise'
  | 'microphony'
  | 'testNote'

type Meaning = { readonly heading: string; readonly guesses: readonly string[] }

const seen = Object.fromEntries(
  SEEN_NAMES.map((name): [SeenName, Meaning] => [name, { heading: SEEN[name], guesses: [name] }]),
) as Readonly<Record<SeenName, Meaning>>

export const TUBE_COLUMNS: Readonly<Record<TubeColumn, Meaning>> = {
  mark: { heading: 'Mark', guesses: ['code', 'stock no', 'stock number', 'number', 'no', 'serial', 'label', 'tag'] },
  designation: { heading: 'Type', guesses: ['tube', 'valve', 'tube type', 'valve type', 'designation', 'model'] },
  condition: { heading: 'Condition', guesses: ['state', 'grade', 'status'] },
  acquired: { heading: 'How it came', guesses: ['acquired', 'source', 'origin', 'from', 'bought from', 'supplier'] },
  construction: { heading: 'Construction', guesses: ['notes on construction', 'build', 'description'] },
  location: { heading: 'Location', guesses: ['drawer', 'shelf', 'bin', 'place', 'where'] },
  cost: { heading: 'Paid', guesses: ['cost', 'purchase price', 'bought for', 'buy price'] },
  price: { heading: 'Price', guesses: ['asking price', 'sale price', 'sell price', 'sell', 'retail'] },
  whereabouts: { heading: 'Whereabouts', guesses: [] },
  used: { heading: 'Used', guesses: ['use', 'new or used'] },
  cosmetics: { heading: 'Cosmetics', guesses: ['looks', 'cosmetic condition'] },
  box: { heading: 'Box', guesses: ['boxed', 'packing'] },
  ...seen,
  warranty: { heading: 'Warranty', guesses: ['guarantee'] },
  warrantyUntil: { heading: 'Warranty until', guesses: ['warranty end', 'guarantee until'] },
  hoursBefore: { heading: 'Hours before it came', guesses: ['hours', 'hours used'] },
  setName: { heading: 'Kept with set', guesses: ['set', 'matched set', 'pair', 'quad', 'group'] },
  reference: { heading: 'Shop reference', guesses: ['reference'] },
  day: { heading: 'Tested on', guesses: ['test date', 'date', 'date tested', 'tested'] },
  testedBy: { heading: 'Tested by', guesses: ['tester name', 'by', 'who'] },
  instrumentName: { heading: 'Instrument', guesses: ['tester', 'tube tester', 'valve tester', 'tested with'] },
  calibratedOn: { heading: 'Calibrated on', guesses: ['calibration', 'calibration date'] },
  plateVolts: {
    heading: 'Plate volts',
    guesses: ['anode volts', 'va', 'ea', 'eb', 'vp', 'plate v', 'anode v', 'plate voltage', 'anode voltage'],
  },
  screenVolts: { heading: 'Screen volts', guesses: ['vg2', 'eg2', 'ec2', 'screen v', 'screen voltage', 'g2 volts'] },
  gridVolts: {
    heading: 'Grid volts',
    guesses: ['vg', 'vg1', 'eg', 'ec1', 'bias', 'grid v', 'grid voltage', 'g1 volts'],
  },
  plateMilliamps: {
    heading: 'Plate current, mA',
    guesses: ['ia', 'ip', 'ib', 'ia ma', 'plate current', 'anode current', 'anode current ma', 'ma', 'plate ma'],
  },
  gm: {
    heading: 'Transconductance, mA/V',
    guesses: ['gm', 's', 'gm ma v', 'transconductance', 'mutual conductance', 'slope', 'ma v', 'gm ms', 'ms'],
  },
  gmMicromhos: {
    heading: 'Transconductance, µmho',
    guesses: ['gm umho', 'umho', 'micromho', 'micromhos', 'gm micromhos', 'gm us', 'transconductance umho'],
  },
  screenMilliamps: { heading: 'Screen current, mA', guesses: ['ig2', 'is', 'screen current', 'ig2 ma', 'screen ma'] },
  secondPlateMilliamps: {
    heading: 'Plate current of section 2, mA',
    guesses: ['ia2', 'ia 2', 'ip2', 'plate current 2', 'anode current 2', 'ia section 2'],
  },
  secondGm: { heading: 'Transconductance of section 2, mA/V', guesses: ['gm2', 'gm 2', 'gm section 2', 'slope 2'] },
  shorts: { heading: 'Shorts', guesses: ['short'] },
  leakage: { heading: 'Heater to cathode', guesses: ['leakage', 'heater cathode leakage', 'h k leakage', 'hk'] },
  gas: { heading: 'Gas', guesses: ['vacuum'] },
  noise: { heading: 'Noise', guesses: ['hum', 'hiss', 'noise and microphony'] },
  microphony: { heading: 'Microphony', guesses: ['microphonics', 'microphonic', 'rings'] },
  testNote: {
    heading: 'Note on the test',
    guesses: ['test note', 'test notes', 'remarks', 'comment', 'comments', 'notes'],
  },
}

export const TUBE_COLUMN_NAMES = Object.keys(TUBE_COLUMNS) as readonly TubeColumn[]

/** By place in the table; null: the column is passed over. */
export type ColumnMapping = readonly (TubeColumn | null)[]

/** "Plate volts (V)" is "platevoltsv"; µ and u are one. */
export const foldedHeading = (heading: string): string =>
  heading
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll('μ', 'u')
    .replace(/[^a-z0-9]+/g, '')

/** The set of headings a mapping is remembered for; their order counts, because columns are known by place. */
export const headingsKey = (headings: readonly string[]): string => headings.map(foldedHeading).join('|')

const byHeading: ReadonlyMap<string, TubeColumn> = new Map(
  TUBE_COLUMN_NAMES.flatMap((name) => {
    const { heading, guesses } = TUBE_COLUMNS[name]
    return [heading, ...guesses, name].map((word) => [foldedHeading(word), name] as const)
  }).reverse(),
)

/** A meaning is given once; a second column that would have it is passed over. */
export function guessedColumns(headings: readonly string[]): ColumnMapping {
  const taken = new Set<TubeColumn>()
  const exact = headings.map((heading) =>
    TUBE_COLUMN_NAMES.find((name) => foldedHeading(TUBE_COLUMNS[name].heading) === foldedHeading(heading)),
  )
  for (const name of exact) if (name) taken.add(name)
  return headings.map((heading, place) => {
    const own = exact[place]
    if (own) return own
    const folded = foldedHeading(heading)
    const name = byHeading.get(folded) ?? byHeading.get(folded.replace(/(volts|v)$/, '')) ?? null
    if (name === null || taken.has(name)) return null
    taken.add(name)
    return name
  })
}
