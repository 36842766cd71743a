/** Lets one through at a time, in the order of arrival. */
export type Turnstile = {
  /** Waits for its turn; the turn lasts until the returned function is called. Calling it twice does nothing. */
  readonly enter: () => Promise<() => void>
  readonly take: <T>(work: () => Promise<T>) => Promise<T>
}

export function openTurnstile(): Turnstile {
  let last: Promise<void> = Promise.resolve()
  const enter = async () => {
    const before = last
    let leave = () => {}
    last = new Promise<void>((resolve) => {
      leave = resolve
    })
    await before
    return leave
  }
  const take = async <T>(work: () => Promise<T>) => {
    const leave = await enter()
    try {
      return await work()
    } finally {
      leave()
    }
  }
  return { enter, take }
}
