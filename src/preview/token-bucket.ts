/** Lets something happen so often, with bursts up to a limit. */
export interface TokenBucket {
  /** Take one; false when there is none left now. */
  take(): boolean
  /** Whole seconds until one is there again; 0 when one is there. */
  wait(): number
}

/**
 * @param most - the longest burst
 * @param perSecond - how many come back each second
 * @param clock - milliseconds since any fixed moment
 */
export function tokenBucket(most: number, perSecond: number, clock: () => number): TokenBucket {
  let left = most
  let at = clock()
  const refill = (): void => {
    const now = clock()
    left = Math.min(most, left + (Math.max(0, now - at) / 1000) * perSecond)
    at = now
  }
  return {
    take() {
      refill()
      if (left < 1) return false
      left -= 1
      return true
    },
    wait() {
      refill()
      return left >= 1 ? 0 : Math.ceil((1 - left) / perSecond)
    },
  }
}
