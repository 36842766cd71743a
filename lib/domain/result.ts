/** Expected refusals are values. A broken assumption throws `Error` instead. */
export type Ok<T> = { readonly ok: true; readonly value: T }
export type Refused<F> = { readonly ok: false; readonly fault: F }
export type Result<T, F> = Ok<T> | Refused<F>

export const ok = <T>(value: T): Ok<T> => ({ ok: true, value })
export const fail = <F>(fault: F): Refused<F> => ({ ok: false, fault })
