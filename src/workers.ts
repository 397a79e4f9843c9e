import cluster from 'node:cluster'
import { passOn } from './rate-peers.ts'

/** They are told a little later than this process is. */
const GRACE_SECONDS = 1

/**
 * One process for each worker, all on the same port. They share nothing but the
 * count of what each address asked for: a case is in its link. A worker that dies is replaced, unless it died before it ever served.
 *
 * @param count - how many
 * @param stopSeconds - how long each may take to end
 */
export function startWorkers(count: number, stopSeconds: number): void {
  let stopping = false
  const served = new Set<number>()
  for (let made = 0; made < count; made++) cluster.fork()
  cluster.on('message', (worker, address: unknown) => {
    if (passOn(worker, address)) return
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
    process.on(signal, () => {
      if (stopping) return
      stopping = true
      for (const worker of Object.values(cluster.workers ?? {})) worker?.process.kill('SIGTERM')
      // They end by themselves; one that computes without a pause does not hear that it should.
      setTimeout(
        () => {
          for (const worker of Object.values(cluster.workers ?? {})) worker?.process.kill('SIGKILL')
          process.exit(0)
        },
        (stopSeconds + GRACE_SECONDS) * 1000,
      ).unref()
    })
  }
}
