/** The part of a Node request that is needed to read what is left of its body. */
export interface Incoming {
  readonly readableEnded: boolean
  readonly destroyed: boolean
  on(event: string, listener: (chunk?: { length: number }) => void): unknown
  off(event: string, listener: (chunk?: { length: number }) => void): unknown
  resume(): unknown
}

/** More than this is not read for the sake of an answer. */
const MOST_BYTES = 16 * 1024 * 1024
const PATIENCE_MS = 5_000

/**
 * Read the rest of a body and throw it away. A sender that is still writing when the answer
 * comes and the connection goes sees a broken connection in place of the answer.
 *
 * @returns whether the body came to its end; if not, the connection is to be closed
 * @see RFC 9112, section 9.6 (tear-down: the reset that loses an answer)
 */
export function readAway(incoming: Incoming): Promise<boolean> {
  if (incoming.readableEnded || incoming.destroyed) return Promise.resolve(true)
  return new Promise((resolve) => {
    let read = 0
    const done = (whole: boolean) => {
      clearTimeout(timer)
      for (const [event, listener] of listeners) incoming.off(event, listener)
      resolve(whole)
    }
    const listeners = [
      [
        'data',
        (chunk?: { length: number }) => {
          read += chunk?.length ?? 0
          if (read > MOST_BYTES) done(false)
        },
      ],
      // Who read the first part of it may hold the stream back.
      ['pause', () => void incoming.resume()],
      ['end', () => done(true)],
      ['close', () => done(true)],
      ['error', () => done(true)],
    ] as const
    const timer = setTimeout(() => done(false), PATIENCE_MS)
    for (const [event, listener] of listeners) incoming.on(event, listener)
    incoming.resume()
  })
}
