/**
 * Names of independent sources of error. Two readings that share a source are
 * correlated through it. As map keys they are written "kind:name".
 */
export type ErrorSource =
  /** Percent part of a meter's accuracy: one error for every reading it takes. */
  | { readonly kind: 'meter-gain'; readonly name: string }
  /** Counts part: own to each reading; the name is the reading. */
  | { readonly kind: 'meter-counts'; readonly name: string }
  /** The name is the part: "V3 cathode resistor". */
  | { readonly kind: 'resistor'; readonly name: string }
  /** The name of the following is the socket, of copper-warming the winding. */
  | { readonly kind: 'screen-share'; readonly name: string }
  | { readonly kind: 'screen-current'; readonly name: string }
  | { readonly kind: 'equal-split'; readonly name: string }
  | { readonly kind: 'copper-warming'; readonly name: string }

const KINDS: readonly ErrorSource['kind'][] = [
  'meter-gain',
  'meter-counts',
  'resistor',
  'screen-share',
  'screen-current',
  'equal-split',
  'copper-warming',
]

/** The one source that is stated as a standard uncertainty; every other is known by its limits (uncertain.ts, withLimits). */
const STATED: ErrorSource['kind'] = 'screen-current'

export const sourceKey = ({ kind, name }: ErrorSource): string => `${kind}:${name}`

export function sourceOfKey(key: string): ErrorSource {
  const kind = KINDS.find((one) => key.startsWith(`${one}:`))
  if (!kind) throw new Error(`Not an error source: ${key}`)
  return { kind, name: key.slice(kind.length + 1) }
}

/** True for an error that is taken as anything between its limits, equally likely. */
export const isLimitKey = (key: string): boolean => KINDS.some((kind) => kind !== STATED && key.startsWith(`${kind}:`))
