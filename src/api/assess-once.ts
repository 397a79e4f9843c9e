import type { Answers } from '../../shared/answers.ts'
import type { Assessment } from '../../shared/assessment.ts'
import { type AssessOptions, assess } from '../assess.ts'
import { DomainError } from '../mechanics/domain-error.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { type Askers, askers, type Client } from './client.ts'
import { NoEngineError } from './no-engine-error.ts'
import { inTurn } from './take-turns.ts'

/** Assessments kept for each rulebook; about 0.2 MB each. */
const KEPT = 64

interface Kept {
  readonly found: Promise<Assessment>
  readonly askers: Askers
}

const byRulebook = new WeakMap<Rulebook, Map<string, Kept>>()

/**
 * The same as {@link assess}, remembered for the cases that were asked for last: the pages of one
 * case are opened one after another, and many people start from the same examples. The same
 * answers give the same assessment, so nobody can tell but by the time.
 *
 * @param client - who asks; when all who asked have gone before it is done, it is given up
 * @returns an assessment that others hold, too: it must not be changed
 * @throws {NoEngineError} if a figure is outside the range of the mechanics
 * @throws {GoneError} if nobody waits for it any more
 * @throws {BusyError} if too many wait already
 */
export function assessOnce(
  rulebook: Rulebook,
  answers: Answers,
  options: AssessOptions,
  client: Client,
): Promise<Assessment> {
  const { system = 'us', withoutWhatIf = false } = options
  const { withoutTurningPoints = false, talking = false } = options
  const key = JSON.stringify([answers, system, withoutWhatIf, withoutTurningPoints, talking])
  const kept = byRulebook.get(rulebook) ?? new Map<string, Kept>()
  byRulebook.set(rulebook, kept)
  const known = kept.get(key)
  // What all its askers have left is about to be given up: another begins anew.
  const entry = known?.askers.wanted() ? known : begun(rulebook, answers, options, client)
  if (entry === known) known.askers.add(client)
  // Set anew, so that the one asked for longest ago comes first and is the next to go.
  kept.delete(key)
  kept.set(key, entry)
  if (kept.size > KEPT) kept.delete(kept.keys().next().value as string)
  entry.found.catch(() => {
    if (kept.get(key) === entry) kept.delete(key)
  })
  return entry.found
}

function begun(rulebook: Rulebook, answers: Answers, options: AssessOptions, client: Client): Kept {
  const waiting = askers(client)
  const found = inTurn(
    (giveWay) => refusing(answers, assess(rulebook, answers, { ...options, giveWay })),
    waiting.wanted,
  )
  found.then(waiting.done, () => undefined)
  return { found, askers: waiting }
}

/** A refusal holds the answers it is about: a page may have more than one case. */
async function refusing(answers: Answers, work: Promise<Assessment>): Promise<Assessment> {
  try {
    return await work
  } catch (error) {
    throw error instanceof DomainError ? new NoEngineError(error, answers) : error
  }
}
