import { type Answer, type Answers, UNKNOWN } from '../../shared/answers.ts'
import { FACT_KEYS, type FactKey, fact, usualUnit } from '../../shared/fact-keys.ts'
import { convert, printAnswer } from '../../shared/print.ts'
import { describeFound, type Problem } from '../../shared/problem.ts'
import { GAS_FACTS } from '../facts/engine-gas.ts'
import type { DomainError } from '../mechanics/domain-error.ts'

/** Figures of the gas that nobody is asked for: they come of the facts that the gas rests on. */
const OF_THE_GAS = new Set([
  'startPressure',
  'startTemperature',
  'intakePressure',
  'exhaustPressure',
  'addedHeat',
])
/** More than these are no hint. */
export const MOST_NAMED = 3

/**
 * The answers that an equation's refusal is likeliest about: the fact that it names, then the
 * figures said that are farthest towards an end of their range, then choices and threads. The
 * equation's own names and SI figures are not for people.
 *
 * @param answers - what was said
 * @returns the likeliest first; none when nothing was said
 */
export function likeliest(
  { argument }: Pick<DomainError, 'argument'>,
  answers: Answers,
): FactKey[] {
  const named = argument.split('.').at(-1) ?? argument
  const counts = (key: FactKey) => key === named || !OF_THE_GAS.has(named) || isOfTheGas(key)
  const figures = FACT_KEYS.filter((key) => positionOf(key, answers) !== undefined)
    .filter(counts)
    .map((key) => ({ key, off: Math.abs((positionOf(key, answers) as number) - 0.5) }))
    .sort((a, b) => Number(b.key === named) - Number(a.key === named) || b.off - a.off)
    .map(({ key }) => key)
  const isWord = (key: FactKey) => ['choice', 'thread'].includes(fact(key).kind)
  const choices = FACT_KEYS.filter((key) => isWord(key) && isSaid(answers[key]))
  return [...figures, ...choices.filter(counts)]
}

function isSaid(answer: Answer | undefined): boolean {
  return answer !== undefined && answer !== UNKNOWN
}

function isOfTheGas(key: FactKey): boolean {
  return GAS_FACTS.some((name) => name === key)
}

/** Where a figure that was said stands in its range, from 0 to 1; money moves no equation of an engine. */
function positionOf(key: FactKey, answers: Answers): number | undefined {
  const entry = fact(key)
  const answer = answers[key]
  if (entry.kind === 'money' || !('low' in entry) || answer === undefined) return undefined
  if (typeof answer === 'string') return undefined
  const value = typeof answer === 'number' ? answer : answer.value
  const isMeasured = typeof answer === 'object' && 'unit' in answer
  const usual = isMeasured ? convert(value, answer.unit, usualUnit(entry)) : value
  return (usual - entry.low) / (entry.high - entry.low)
}

/**
 * An answer that keeps the others from being an engine, in the person's own units.
 *
 * @param nearest - a figure that would fit, where one was found
 */
export function problemOf(key: FactKey, answers: Answers, nearest?: Answer): Problem {
  const answer = answers[key]
  const outside = 'with the other answers it is outside what the equations cover'
  return {
    field: key,
    code: 'out-of-range',
    found: describeFound(answer === undefined ? '' : printAnswer(key, answer)),
    fits: nearest === undefined ? outside : `${outside}; ${printAnswer(key, nearest)} would fit`,
  }
}
