import type { Answers } from '../../shared/answers.ts'
import { FACT_KEYS, type FactKey, fact, isFactKey, usualUnit } from '../../shared/fact-keys.ts'
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
const MOST_NAMED = 3

/**
 * The refusal of an equation as problems of what the person said: the fact that it names, or else
 * the figures said that are farthest towards an end of their range, in the person's own units. The
 * equation's own names and SI figures are not for people.
 *
 * @param answers - what was said
 * @returns the likeliest first; none when no figure was said
 */
export function outsideTheModel({ argument }: DomainError, answers: Answers): Problem[] {
  const named = argument.split('.').at(-1) ?? argument
  const said = FACT_KEYS.filter((key) => positionOf(key, answers) !== undefined)
  if (isFactKey(named) && said.includes(named)) return [problemOf(named, answers)]
  const counts = (key: FactKey) => !OF_THE_GAS.has(named) || isOfTheGas(key)
  return said
    .filter(counts)
    .map((key) => ({ key, off: Math.abs((positionOf(key, answers) as number) - 0.5) }))
    .sort((a, b) => b.off - a.off)
    .slice(0, MOST_NAMED)
    .map(({ key }) => problemOf(key, answers))
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

function problemOf(key: FactKey, answers: Answers): Problem {
  const answer = answers[key]
  return {
    field: key,
    code: 'out-of-range',
    found: describeFound(answer === undefined ? '' : printAnswer(key, answer)),
    fits: 'with the other answers it is outside what the equations cover',
  }
}
