import type { Answers } from '../../shared/answers.ts'
import type { Assessment } from '../../shared/assessment.ts'
import { type AssessOptions, assess } from '../assess.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { inTurn } from './take-turns.ts'

/** Assessments kept for each rulebook; about 0.2 MB each. */
const KEPT = 64

const byRulebook = new WeakMap<Rulebook, Map<string, Promise<Assessment>>>()

/**
 * The same as {@link assess}, remembered for the cases that were asked for last: the pages of one
 * case are opened one after another, and many people start from the same examples. The same
 * answers give the same assessment, so nobody can tell but by the time.
 *
 * @returns an assessment that others hold, too: it must not be changed
 * @throws {DomainError} if a figure is outside the range of the mechanics
 */
export function assessOnce(
  rulebook: Rulebook,
  answers: Answers,
  options: AssessOptions = {},
): Promise<Assessment> {
  const { system = 'us', withoutWhatIf = false } = options
  const { withoutTurningPoints = false, talking = false } = options
  const key = JSON.stringify([answers, system, withoutWhatIf, withoutTurningPoints, talking])
  let kept = byRulebook.get(rulebook)
  if (!kept) {
    kept = new Map()
    byRulebook.set(rulebook, kept)
  }
  const found =
    kept.get(key) ?? inTurn((giveWay) => assess(rulebook, answers, { ...options, giveWay }))
  // Set anew, so that the one asked for longest ago comes first and is the next to go.
  kept.delete(key)
  kept.set(key, found)
  if (kept.size > KEPT) kept.delete(kept.keys().next().value as string)
  found.catch(() => kept.delete(key))
  return found
}
