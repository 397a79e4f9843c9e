/** One measured thing, ms. */
export interface Timed {
  /** Processor time of a run, the mean: it does not count what others on the machine do. */
  readonly cpu: number
  /** Median time by the clock. */
  readonly median: number
}

/** Time a piece of work over and over; the first fifth is to warm up and is not counted. */
export async function timed(runs: number, work: () => unknown): Promise<Timed> {
  for (let run = 0; run < Math.max(2, runs / 5); run++) await work()
  const times: number[] = []
  const before = process.cpuUsage()
  for (let run = 0; run < runs; run++) {
    const start = performance.now()
    await work()
    times.push(performance.now() - start)
  }
  const { user, system } = process.cpuUsage(before)
  times.sort((a, b) => a - b)
  return { cpu: (user + system) / 1000 / runs, median: times[runs >> 1] as number }
}

/** Print a table with its columns in line. */
export function table(title: string, rows: readonly (readonly string[])[]): void {
  const widths = (rows[0] ?? []).map((_, column) =>
    Math.max(...rows.map((row) => (row[column] ?? '').length)),
  )
  console.log(`\n${title}`)
  for (const row of rows) {
    const cells = row.map((cell, column) => {
      const width = widths[column] as number
      return column === 0 ? cell.padEnd(width) : cell.padStart(width)
    })
    console.log(`  ${cells.join('   ')}`)
  }
}

export function ms(value: number): string {
  return value < 10 ? value.toFixed(3) : value.toFixed(1)
}
