import cluster, { type Worker } from 'node:cluster'
import type { RatePeers } from './api/deps.ts'

/** What a process tells the others: an address that it has served once more. */
interface Served {
  readonly served: string
}

function isServed(message: unknown): message is Served {
  return typeof message === 'object' && message !== null && 'served' in message
}

/** The other processes on this port, for the one that calls; undefined when it is the only one. */
export function ratePeers(): RatePeers | undefined {
  if (!cluster.isWorker) return undefined
  let hear: (address: string) => void = () => undefined
  process.on('message', (message) => {
    if (isServed(message)) hear(message.served)
  })
  return {
    tell(address) {
      if (process.connected) process.send?.({ served: address } satisfies Served)
    },
    onHearing(listener) {
      hear = listener
    },
  }
}

/**
 * Hand what one process tells on to the others, in the process that started them.
 *
 * @returns whether the message was one of these
 */
export function passOn(from: Worker, message: unknown): boolean {
  if (!isServed(message)) return false
  for (const worker of Object.values(cluster.workers ?? {})) {
    if (worker && worker.id !== from.id && worker.isConnected()) worker.send(message)
  }
  return true
}
