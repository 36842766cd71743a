/** Addresses of the exchange of one tube, and what they ask for. */
type Query = Record<string, string | string[] | undefined>

export type ExchangeAsked = {
  readonly position: string
  /** As typed; empty: none is looked at yet. */
  readonly mark: string
  /** The accepted quote, from the work step; else the latest. */
  readonly work: boolean
}

const one = (value: string | string[] | undefined) => (typeof value === 'string' ? value.trim() : '')

export const readExchangeAsked = (query: Query): ExchangeAsked => ({
  position: one(query.socket),
  mark: one(query.with),
  work: one(query.of) === 'work',
})

/** `limits` are those typed, so that a look at one keeps them. */
export function exchangeAddress(
  jobNumber: string,
  { position, mark, work }: ExchangeAsked,
  limits: Readonly<Record<string, string>> = {},
): string {
  const asked = { socket: position, ...(mark === '' ? {} : { with: mark }), ...(work ? { of: 'work' } : {}) }
  return `/jobs/${jobNumber}/tubes/exchange?${new URLSearchParams({ ...asked, ...limits })}`
}

/** The step it came from, telling what was exchanged. */
export function exchangedAddress(jobNumber: string, { position, work }: ExchangeAsked, was: string): string {
  return `/jobs/${jobNumber}/${work ? 'work' : 'tubes'}?${new URLSearchParams({ exchanged: position, was })}`
}
