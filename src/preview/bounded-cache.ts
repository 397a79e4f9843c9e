/** A cache that forgets what was longest not asked for, by count and by size. */
export interface BoundedCache<T> {
  get(key: string): T | undefined
  set(key: string, value: T): void
  /** Sum of what is kept. */
  readonly size: number
}

/**
 * @param most - entries kept
 * @param mostSize - sum of sizes kept; a value larger than that is not kept at all
 * @param sizeOf - the size of a value, in any unit
 */
export function boundedCache<T>(
  most: number,
  mostSize: number,
  sizeOf: (value: T) => number,
): BoundedCache<T> {
  // A Map keeps the order of insertion: the first is the one longest not asked for.
  const kept = new Map<string, T>()
  let size = 0
  const drop = (key: string): void => {
    const value = kept.get(key)
    if (value === undefined) return
    kept.delete(key)
    size -= sizeOf(value)
  }
  return {
    get(key) {
      const value = kept.get(key)
      if (value === undefined) return undefined
      kept.delete(key)
      kept.set(key, value)
      return value
    },
    set(key, value) {
      drop(key)
      if (sizeOf(value) > mostSize) return
      kept.set(key, value)
      size += sizeOf(value)
      for (const oldest of kept.keys()) {
        if (kept.size <= most && size <= mostSize) break
        drop(oldest)
      }
    },
    get size() {
      return size
    },
  }
}
