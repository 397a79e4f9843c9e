/** Lets whatever else waits have the thread once. */
export type GiveWay = () => Promise<void>

/** More computations waiting than are done in half a minute: who asks next had better ask later. */
export const MOST_WAITING = 1000

/** What {@link inTurn} refuses with when too many wait; the server answers 503. */
export class BusyError extends Error {
  override readonly name = 'BusyError'
}

let waiting = 0
let giveWay: GiveWay | undefined
let last: Promise<unknown> = Promise.resolve()
let admitted: Promise<void> = Promise.resolve()

/**
 * Have requests begin one by one, and long computations wait for each other, first come first
 * served, and give way between their steps. Without it a server that is asked much takes in one
 * connection for each round of answers, and those who came late wait for ever. Not for hosts that
 * forbid one request to wait for another.
 *
 * @param pass - lets the host take in connections and answer short requests
 */
export function takeTurns(pass: GiveWay): void {
  giveWay = pass
}

/**
 * Wait until a request may begin: one for each time the host comes round, so that it takes in
 * connections as fast as it answers them.
 */
export function admission(): Promise<void> {
  if (giveWay) admitted = admitted.then(giveWay)
  return admitted
}

/**
 * Do a long computation in its turn.
 *
 * @param work - calls what it is given, if it is given anything, between its steps
 * @throws {BusyError} (as a rejection) if {@link MOST_WAITING} wait already
 */
export function inTurn<T>(work: (giveWay: GiveWay | undefined) => Promise<T>): Promise<T> {
  if (!giveWay) return work(undefined)
  const pass = giveWay
  if (waiting >= MOST_WAITING) return Promise.reject(new BusyError())
  waiting++
  const done = last.then(() => work(pass)).finally(() => waiting--)
  last = done.catch(() => {})
  return done
}
