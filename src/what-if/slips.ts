import { type Answer, type Answers, readAnswer, withAnswer } from '../../shared/answers.ts'
import type { Contradiction } from '../../shared/assessment.ts'
import { type FactKey, fact, isFactKey } from '../../shared/fact-keys.ts'
import { printAnswer } from '../../shared/print.ts'

/** A slip of the pen that would explain a contradiction, and what was then meant. */
export interface Slip {
  readonly key: FactKey
  readonly kind: 'decimal-point' | 'unit'
  readonly meant: Answer
}

/** Ids of the contradictions that would stand for other answers; undefined for what is no engine. */
export type ContradictionsOf = (answers: Answers) => Promise<readonly string[] | undefined>

const DECIMAL = [0.1, 10, 0.01, 100] as const
/** Units that are taken for each other, by kind of fact. */
const UNITS: Readonly<Record<string, readonly [string, string]>> = {
  length: ['in', 'mm'],
  torque: ['lb ft', 'N m'],
  pressure: ['psi', 'bar'],
  mass: ['g', 'oz'],
  power: ['hp', 'kW'],
}

/**
 * Which single slip would make a contradiction go away without raising another: a
 * decimal point moved by one or two places, or the other unit. Every figure of the
 * contradiction that was said is tried.
 *
 * @param contradictionsOf - judges changed answers
 * @returns the slips that mend it, those of the likelier fact first; often none
 */
export async function slipsThatMend(
  { rule, between, likelierSlip }: Pick<Contradiction, 'rule' | 'between' | 'likelierSlip'>,
  answers: Answers,
  contradictionsOf: ContradictionsOf,
): Promise<Slip[]> {
  const before = new Set(await contradictionsOf(answers))
  const keys = between.filter(isFactKey)
  const sorted = [...keys.filter((key) => key === likelierSlip), ...keys]
  const found: Slip[] = []
  for (const key of new Set(sorted)) {
    for (const slip of candidates(key, answers[key])) {
      const after = await contradictionsOf(withAnswer(answers, key, slip.meant))
      if (after && !after.includes(rule) && after.every((id) => before.has(id))) found.push(slip)
    }
  }
  return found
}

/** A slip in words: "If the decimal point slipped, bore was meant as 4.03 in." */
export function slipText({ key, kind, meant }: Slip): string {
  const { short } = fact(key)
  const text = printAnswer(key, meant)
  return kind === 'unit'
    ? `With the other unit it fits: ${short} ${text}.`
    : `With the decimal point moved it fits: ${short} ${text}.`
}

function candidates(key: FactKey, answer: Answer | undefined): Slip[] {
  const entry = fact(key)
  if (answer === undefined || typeof answer === 'string') return []
  const value = typeof answer === 'number' ? answer : answer.value
  const as = (figure: number): Answer =>
    typeof answer === 'number' ? figure : { ...without(answer), value: figure }
  const moved = DECIMAL.map((factor) => Number((value * factor).toPrecision(6)))
  const decimal = moved
    .filter((figure) => fits(key, as(figure)))
    .map((figure): Slip => ({ key, kind: 'decimal-point', meant: as(figure) }))
  const pair = UNITS[entry.kind]
  if (!pair || typeof answer === 'number' || !('unit' in answer)) return decimal
  const other = pair.find((unit) => unit !== answer.unit)
  const meant = other === undefined ? undefined : { value, unit: other }
  return meant && fits(key, meant) ? [...decimal, { key, kind: 'unit', meant }] : decimal
}

/** The ends of a spread slip with it; a slip is judged by the figure alone. */
function without<T extends object>(answer: T): Omit<T, 'low' | 'high'> {
  const { low: _low, high: _high, ...rest } = answer as T & { low?: number; high?: number }
  return rest as Omit<T, 'low' | 'high'>
}

function fits(key: FactKey, answer: Answer): boolean {
  return 'ok' in readAnswer(key, answer)
}
