import { type Answers, withAnswer } from '../../shared/answers.ts'
import { FACT_KEYS, type FactKey, isFactKey } from '../../shared/fact-keys.ts'
import type { Problem } from '../../shared/problem.ts'
import { assess } from '../assess.ts'
import { DomainError } from '../mechanics/domain-error.ts'
import type { Rulebook } from '../rulebook/load.ts'
import { whatIf } from '../what-if/quick-call.ts'
import { type Fits, nearestThatFits } from './nearest-that-fits.ts'
import type { NoEngineError } from './no-engine-error.ts'
import { likeliest, MOST_NAMED, problemOf } from './outside-the-model.ts'
import type { GiveWay } from './take-turns.ts'

/** An answer that keeps the others from being an engine. */
export interface AtFault {
  readonly key: FactKey
  readonly problem: Problem
  /** The case with this answer mended or left open, which is an engine; undefined when none was found. */
  readonly mended: Answers | undefined
}

/** So many answers are tried, the likeliest first; the others stand where they are usual. */
const MOST_TRIED = 12

/**
 * Which answers keep a case from being an engine: those without which, or as they were before,
 * the rest is one. Where no single one does, the likeliest, which the rest may do without together.
 *
 * @param giveWay - called between the tries
 * @returns up to three, each with what would fit; fields stand in the case that was refused
 */
export async function atFault(
  rulebook: Rulebook,
  error: NoEngineError,
  giveWay?: GiveWay | undefined,
): Promise<AtFault[]> {
  const { answers, earlier } = error
  const fits: Fits = async (tried) => {
    await giveWay?.()
    return isEngine(assess(rulebook, tried, { withoutWhatIf: true }))
  }
  const ask = whatIf(rulebook, undefined, giveWay)
  const mayFit: Fits = async (tried) => (await ask(tried)) !== undefined
  // What another step than the assessment refused cannot be tried.
  const mayTry = !(await fits(answers))
  const before = mayTry && earlier && (await fits(earlier)) ? earlier : undefined
  const suspects = before ? changedIn(answers, before) : likeliest(error, answers)
  const found: AtFault[] = []
  for (const key of mayTry ? suspects.slice(0, MOST_TRIED) : []) {
    const mended = await mendedBy(key, answers, before, fits)
    if (!mended) continue
    const nearest = await nearestThatFits(rulebook, key, { answers, mended, fits, mayFit })
    found.push({ key, mended, problem: placed(error, problemOf(key, answers, nearest)) })
    // What the equation itself names needs no company.
    if (found.length === MOST_NAMED || isNamed(error, key)) return found
  }
  return found.length > 0 ? found : together(error, suspects, before, mayTry ? fits : undefined)
}

async function isEngine(work: Promise<unknown>): Promise<boolean> {
  try {
    await work
    return true
  } catch (error) {
    if (error instanceof DomainError) return false
    throw error
  }
}

function changedIn(answers: Answers, before: Answers): FactKey[] {
  return FACT_KEYS.filter((key) => JSON.stringify(answers[key]) !== JSON.stringify(before[key]))
}

function isNamed({ argument }: NoEngineError, key: FactKey): boolean {
  const named = argument.split('.').at(-1) ?? argument
  return isFactKey(named) && named === key
}

/** The case without one answer, or with it as it was before, if that is an engine. */
async function mendedBy(
  key: FactKey,
  answers: Answers,
  before: Answers | undefined,
  fits: Fits,
): Promise<Answers | undefined> {
  const was = before?.[key]
  for (const answer of was === undefined ? [undefined] : [was, undefined]) {
    const tried = withAnswer(answers, key, answer)
    if (await fits(tried)) return tried
  }
  return undefined
}

/** The likeliest, which mend it only together, if at all. */
async function together(
  error: NoEngineError,
  suspects: readonly FactKey[],
  before: Answers | undefined,
  fits: Fits | undefined,
): Promise<AtFault[]> {
  const { answers } = error
  const first = suspects[0]
  const isPlain = first !== undefined && isNamed(error, first)
  const named = suspects.slice(0, isPlain ? 1 : MOST_NAMED)
  const without = named.reduce<Answers>(
    (left, key) => withAnswer(left, key, before?.[key]),
    answers,
  )
  const mended = fits && named.length > 0 && (await fits(without)) ? without : undefined
  return named.map((key) => ({ key, mended, problem: placed(error, problemOf(key, answers)) }))
}

function placed({ place }: NoEngineError, problem: Problem): Problem {
  return place === undefined ? problem : { ...problem, field: `${place}.${problem.field}` }
}
