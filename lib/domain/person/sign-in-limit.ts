/**
 * How many failed sign-ins are borne. Counted for the sign-in name and for the
 * whole shop, so that neither one name nor a list of names can be tried on
 * without end. A shop address behind a proxy cannot be told apart reliably, so
 * addresses are not counted. Shop rule.
 */
export const LIMIT_WINDOW_MINUTES = 15
export const FAILURES_BY_NAME = 8
export const FAILURES_IN_SHOP = 60

export type SignInLimit = { readonly failuresByName: number; readonly failuresInShop: number }

export const signInBlocked = ({ failuresByName, failuresInShop }: SignInLimit): boolean =>
  failuresByName >= FAILURES_BY_NAME || failuresInShop >= FAILURES_IN_SHOP

export const limitWindowStart = (now: Date): Date => new Date(now.getTime() - LIMIT_WINDOW_MINUTES * 60_000)
