/** The answers of the identification in bench words. */
import type { Words } from '../words'
import { capital } from '../words'
import type { Remark } from './designation/designation-reading'
import type { Candidate, State } from './identify'
import { knowledgeSource } from './knowledge-source'
import type { Service, ServiceNumber, Version } from './version'

/** "%plate" is the plate or the anode, as the shop says. */
export const inWords = (sentence: string, { plate }: Pick<Words, 'plate'>): string =>
  sentence.replace(/%Plate/g, capital(plate)).replace(/%plate/g, plate)

const STATE_WORDS: Readonly<Record<State, string>> = {
  consistent: 'consistent',
  contradictory: 'contradictory',
  unknown: 'unknown',
}
export const stateWord = (state: State): string => STATE_WORDS[state]

const STATE_SHAPES: Readonly<Record<State, string>> = { consistent: '●', contradictory: '✕', unknown: '?' }
/** Beside the word, so that nothing hangs on a colour. */
export const stateShape = (state: State): string => STATE_SHAPES[state]

const STATE_SENTENCES: Readonly<Record<State, string>> = {
  consistent: 'Label and construction agree as far as they were looked at. That is all it says.',
  contradictory: 'Label and construction, or two marks, exclude each other.',
  unknown: 'Not enough was told to hold the label against the construction.',
}
export const stateSentence = (state: State): string => STATE_SENTENCES[state]

const SERVICE_WORDS: Readonly<Record<Service, string>> = {
  civil: 'civil',
  jan: 'US military, JAN',
  'signal-corps': 'US Army Signal Corps, VT',
  'common-valve': 'British services, CV or M8000',
  'british-service': 'British services before CV',
}

export const serviceText = ({ service, number }: ServiceNumber): string =>
  number === null ? SERVICE_WORDS[service] : `${SERVICE_WORDS[service]}: ${number}`

const ENVELOPE_WORDS: Readonly<Record<Version['envelope'], string>> = {
  metal: 'metal can',
  G: 'glass, shouldered',
  GT: 'glass, straight T-9',
  'later-G': 'glass, later issue of the G',
  glass: 'glass',
}

function standingText({ standing, of }: Version): string | null {
  if (of === null || standing === 'designation') return null
  return standing === 'special-quality'
    ? `special-quality or ruggedised issue of the ${of}`
    : `another number of the ${of}`
}

/** "Type 6V6; glass, straight T-9; another number of the 6V6GT". */
export function versionText(version: Version): string {
  const base = version.baseLetter === 'Y' ? 'brown low-loss base' : version.baseLetter === 'X' ? 'ceramic base' : null
  const pieces = [`Type ${version.typeName}`, ENVELOPE_WORDS[version.envelope], base, standingText(version)]
  return pieces.filter((piece) => piece !== null).join('; ')
}

export const candidateName = ({ version }: Pick<Candidate, 'version'>): string =>
  version?.designation ?? 'None known here'

/** Of the weight there is, in whole per cent; it orders the list and is no probability of being real. */
export function shareText(share: number): string {
  const percent = Math.round(100 * share)
  if (percent >= 100) return 'over 99 %'
  return percent < 1 ? 'under 1 %' : `${percent} %`
}

export const sourceText = ({ source }: Pick<Remark, 'source'>): string => knowledgeSource(source).text

/** With its sign; two figures, as the scale is no finer. */
export const weightText = (weight: number): string => `${weight < 0 ? '−' : '+'}${Math.abs(weight).toFixed(1)}`

export const NOT_GENUINE =
  'A label proves little: one factory supplied many labels, and relabelling is as old as the trade. The rules are weighed as if they were independent, which they are not; the list is an order, no proof.'
