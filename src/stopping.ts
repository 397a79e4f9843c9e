import type { Server } from 'node:http'
import { closeLine } from './api/take-turns.ts'

/** Of the time to end, so much is left to send refusals to those who still wait. */
const REFUSING_SECONDS = 2

/** So long it still takes in what was sent before it was told to stop. */
const TAKING_IN_SECONDS = 1

/** A server that was told to stop, or was not yet. */
export interface Stopping {
  /** Whether it was told to. */
  has(): boolean
}

/**
 * Stop at SIGTERM or SIGINT: soon take no new connection, answer what came already, refuse what is
 * left of it when the time is nearly over, and end the process.
 *
 * @param seconds - until the process ends, at the latest
 */
export function stopWhenTold(server: Server, seconds: number): Stopping {
  let told = false
  const stop = () => {
    if (told) return
    told = true
    // What was sent already may not be taken in yet: closing at once would reset it.
    setTimeout(
      () => {
        server.close(() => process.exit(0))
        // Idle connections would hold the process for nothing.
        server.closeIdleConnections()
      },
      Math.min(TAKING_IN_SECONDS, seconds / 4) * 1000,
    )
    setTimeout(closeLine, Math.max(0, seconds - REFUSING_SECONDS) * 1000).unref()
    setTimeout(() => process.exit(0), seconds * 1000).unref()
  }
  for (const signal of ['SIGTERM', 'SIGINT'] as const) process.on(signal, stop)
  return { has: () => told }
}
