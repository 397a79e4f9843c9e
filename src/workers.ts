import cluster from 'node:cluster'

/**
 * One process for each worker, all on the same port. They share nothing: a case is in
 * its link. A worker that dies is replaced, unless it died before it ever served.
 *
 * @param count - how many
 * @param drainSeconds - how long they may take to end
 */
export function startWorkers(count: number, drainSeconds: number): void {
  let stopping = false
  const served = new Set<number>()
  for (let made = 0; made < count; made++) cluster.fork()
  cluster.on('message', (worker, address: unknown) => {
    if (served.size === 0) console.log(`The guide is at ${String(address)} (${count} processes)`)
    served.add(worker.id)
  })
  cluster.on('exit', (worker) => {
    if (!stopping && served.has(worker.id)) cluster.fork()
    const alive = Object.keys(cluster.workers ?? {}).length > 0
    if (!alive) process.exit(stopping ? 0 : 1)
  })
  process.on('SIGHUP', () => {
    for (const worker of Object.values(cluster.workers ?? {})) worker?.process.kill('SIGHUP')
  })
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.once(signal, () => {
      stopping = true
      for (const worker of Object.values(cluster.workers ?? {})) worker?.process.kill('SIGTERM')
      setTimeout(() => process.exit(0), drainSeconds * 1000).unref()
    })
  }
}
