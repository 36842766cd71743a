/** Which page was asked for before a sign-in, and which of them one is led back to. */

/** Set by the proxy on every request for a page of the shop; never trusted further than `safeReturn`. */
export const ASKED_FOR = 'x-benchglow-page'

const PAGE = /^\/(jobs|papers|amps|customers|stock|types|outbox|settings)(\/[\w-]+)*$/

/** A page of this shop, or the day: an address that leads elsewhere is not followed. */
export const safeReturn = (path: string | null | undefined): string => (path && PAGE.test(path) ? path : '/')
