import { type Answer, type Answers, withAnswer } from '../../shared/answers.ts'
import { type FactKey, fact, usualUnit } from '../../shared/fact-keys.ts'
import { convert } from '../../shared/print.ts'
import { buildFromAnswers } from '../build/from-answers.ts'
import type { Rulebook } from '../rulebook/load.ts'

/** Whether answers make an engine. */
export type Fits = (answers: Answers) => Promise<boolean>

/** Halvings between what fits and what does not: to one part in 128 of the way. */
const STEPS = 7
/** Digits worth naming of a bound that was found by trying. */
const DIGITS = [2, 3]
/** Digits to which a double is sure to print without binary dust. */
const DUST_FREE = 12

interface Tried {
  readonly answers: Answers
  /** The same with the answer mended or left open, which fits. */
  readonly mended: Answers
  readonly fits: Fits
  /** The same sooner; what it takes may still be no engine. */
  readonly mayFit: Fits
}

/**
 * The figure nearest to the one said that fits with the other answers, as the person counts and
 * rounded towards what fits. It was tried; that all beyond it fits is not said.
 *
 * @returns undefined for what is no figure, or where none was found
 */
export async function nearestThatFits(
  rulebook: Rulebook,
  key: FactKey,
  { answers, mended, fits, mayFit }: Tried,
): Promise<Answer | undefined> {
  const entry = fact(key)
  const said = figureOf(answers[key])
  const { value: usual } = buildFromAnswers(rulebook, mended).facts[key]
  if (!said || entry.kind === 'money' || typeof usual !== 'number') return undefined
  const good = said.unit === '' ? usual : convert(usual, usualUnit(entry), said.unit)
  const written = (value: number): Answer => (said.unit === '' ? value : { value, unit: said.unit })
  const at = (value: number) => withAnswer(answers, key, written(value))
  if (!(await mayFit(at(good)))) return undefined
  let [inside, outside] = [good, said.value]
  for (let step = 0; step < STEPS; step++) {
    const middle = (inside + outside) / 2
    if (await mayFit(at(middle))) inside = middle
    else outside = middle
  }
  for (const digits of DIGITS) {
    const rounded = roundedTowards(good, inside, digits)
    if (isBetween(rounded, good, said.value) && (await fits(at(rounded)))) return written(rounded)
  }
  return undefined
}

function figureOf(answer: Answer | undefined): { value: number; unit: string } | undefined {
  if (typeof answer === 'number') return { value: answer, unit: '' }
  if (typeof answer !== 'object' || 'currency' in answer) return undefined
  return { value: answer.value, unit: 'unit' in answer ? answer.unit : '' }
}

function roundedTowards(good: number, value: number, digits: number): number {
  if (value === 0) return 0
  const place = Math.floor(Math.log10(Math.abs(value))) - digits + 1
  const step = 10 ** place
  const whole = good < value ? Math.floor(value / step) : Math.ceil(value / step)
  // Two or three digits were kept; what follows is binary dust, however small the figure is.
  return Number((whole * step).toPrecision(DUST_FREE))
}

function isBetween(value: number, one: number, other: number): boolean {
  return value >= Math.min(one, other) && value <= Math.max(one, other)
}
