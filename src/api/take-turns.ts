import { GoneError } from './client.ts'

/** Lets whatever else waits have the thread once. */
export type GiveWay = () => Promise<void>

/** More computations waiting than are done in half a minute: who asks next had better ask later. */
export const MOST_WAITING = 1000

/** What {@link inTurn} refuses with when too many wait or the line is closed; the server answers 503. */
export class BusyError extends Error {
  override readonly name = 'BusyError'

  constructor(readonly why: 'busy' | 'stopping') {
    super(why)
  }
}

interface Waiting {
  readonly begin: (pass: GiveWay) => Promise<void>
  readonly refuse: (why: Error) => void
  readonly wanted: () => boolean
}

let line: Waiting[] = []
let isServing = false
let isClosed = false
let giveWay: GiveWay | undefined
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
 * Do a long computation in its turn, if anybody still waits for it then.
 *
 * @param work - calls what it is given, if it is given anything, between its steps
 * @param wanted - whether anybody waits for it; asked before it begins and between its steps, and
 * never where nobody takes turns
 * @throws {BusyError} (as a rejection) if {@link MOST_WAITING} wait already, or the line is closed
 * @throws {GoneError} (as a rejection) if nobody waits for it any more
 */
export function inTurn<T>(
  work: (giveWay: GiveWay | undefined) => Promise<T>,
  wanted: () => boolean = () => true,
): Promise<T> {
  if (!giveWay) return work(undefined)
  const pass = giveWay
  if (isClosed) return Promise.reject(new BusyError('stopping'))
  if (isFull()) return Promise.reject(new BusyError('busy'))
  return new Promise((resolve, refuse) => {
    const begin = () => work(whileWanted(pass, wanted)).then(resolve, refuse)
    line.push({ begin, refuse, wanted })
    if (!isServing) void serve(pass)
  })
}

/** Refuse all who wait, who is served at the next step, and who comes: the server ends soon. */
export function closeLine(): void {
  isClosed = true
  for (const { refuse } of line) refuse(new BusyError('stopping'))
  line = []
}

/** One after another until nobody waits; between them others pass, and it shows who has gone. */
async function serve(pass: GiveWay): Promise<void> {
  isServing = true
  for (let next = line.shift(); next; next = line.shift()) {
    if (!next.wanted()) next.refuse(new GoneError())
    else {
      await next.begin(pass)
      if (line.length > 0) await pass()
    }
  }
  isServing = false
}

/** Those who have gone leave the line before it counts as full. */
function isFull(): boolean {
  const isLong = () => line.length + (isServing ? 1 : 0) >= MOST_WAITING
  if (!isLong()) return false
  const gone = line.filter(({ wanted }) => !wanted())
  line = line.filter(({ wanted }) => wanted())
  for (const { refuse } of gone) refuse(new GoneError())
  return isLong()
}

function whileWanted(pass: GiveWay, wanted: () => boolean): GiveWay {
  return async () => {
    await pass()
    if (isClosed) throw new BusyError('stopping')
    if (!wanted()) throw new GoneError()
  }
}
