const DIGITS = 12
/** What a person said comes back as it was said. */
const AS_GIVEN: ReadonlySet<string> = new Set(['answers', 'inputs', 'parked'])

/**
 * The same value with every figure reckoned in it to twelve significant digits. Engines of the
 * language differ in the last bit of `exp` and `pow`; what is answered must not.
 *
 * @param value - anything JSON can say
 */
export function steadyFigures<T>(value: T): T {
  return steady(value) as T
}

function steady(value: unknown): unknown {
  if (typeof value === 'number') {
    return Number.isInteger(value) ? value : Number(value.toPrecision(DIGITS))
  }
  if (Array.isArray(value)) return value.map(steady)
  if (typeof value !== 'object' || value === null) return value
  const entries = Object.entries(value)
  return Object.fromEntries(
    entries.map(([key, inner]) => [key, AS_GIVEN.has(key) ? inner : steady(inner)]),
  )
}
