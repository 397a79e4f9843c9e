/** The middle of some values, or half-way between the two middle ones; NaN of none. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other)
  const upper = sorted[Math.floor(sorted.length / 2)] ?? Number.NaN
  const lower = sorted[Math.floor((sorted.length - 1) / 2)] ?? Number.NaN
  return (upper + lower) / 2
}
