import fc from 'fast-check'
import type { Answer, Answers } from '../../shared/answers.ts'
import { choicesOf } from '../../shared/answers.ts'
import { FACT_KEYS, type Fact, type FactKey, fact } from '../../shared/fact-keys.ts'
import { convert } from '../../shared/print.ts'
import { UNITS } from '../../shared/units.ts'

/** Threads as a parts list has them, in the one way that answers keep them. */
const THREADS = ['1/2-13', '7/16-14', '3/8-16', '9/16-12', '1/2-20', 'M11x1.25', 'M12x1.75', 'M8x1']

/** Every unit that measures what a fact is. */
export function unitsThatFit(entry: Fact): string[] {
  return Object.keys(UNITS).filter((symbol) => UNITS[symbol]?.dimension === entry.kind)
}

/** Any good answer to a fact, in its canonical shape: unknown, every choice, every unit, with and without a spread. */
export function anyAnswer(key: FactKey): fc.Arbitrary<Answer> {
  const unknown = fc.constant('unknown')
  const entry = fact(key)
  switch (entry.kind) {
    case 'choice':
      return fc.oneof(unknown, fc.constantFrom(...Object.keys(choicesOf(entry))))
    case 'thread':
      return fc.oneof(unknown, fc.constantFrom(...THREADS))
    case 'number':
      return fc.oneof(
        unknown,
        inside(entry.low, entry.high).map(({ value }) => value),
        spreadInside(entry.low, entry.high),
      )
    case 'money': {
      const currency = fc.constantFrom('USD', 'EUR', 'GBP', 'JPY')
      const figures = fc.oneof(inside(entry.low, entry.high), spreadInside(entry.low, entry.high))
      return fc.oneof(
        unknown,
        fc.tuple(figures, currency).map(([f, c]) => ({ ...f, currency: c })),
      )
    }
    default:
      return fc.oneof(unknown, ...unitsThatFit(entry).map((unit) => quantityIn(entry, unit)))
  }
}

function quantityIn(entry: Extract<Fact, { units: readonly string[] }>, unit: string) {
  const usual = entry.units[0] as string
  const [low, high] = [convert(entry.low, usual, unit), convert(entry.high, usual, unit)]
  return fc.oneof(inside(low, high), spreadInside(low, high)).map((f) => ({ ...f, unit }))
}

function inside(low: number, high: number): fc.Arbitrary<{ value: number }> {
  return fc.double({ min: low, max: high, noNaN: true }).map((value) => ({ value: value + 0 }))
}

function spreadInside(low: number, high: number) {
  return fc
    .tuple(...[0, 1, 2].map(() => fc.double({ min: low, max: high, noNaN: true })))
    .map((three) => three.map((value) => value + 0).sort((a, b) => a - b))
    .map(([least, value, most]) => ({
      value: value as number,
      low: least as number,
      high: most as number,
    }))
}

/** Any record of good answers, most facts unsaid. */
export const anyAnswers: fc.Arbitrary<Answers> = fc.record(
  Object.fromEntries(FACT_KEYS.map((key) => [key, anyAnswer(key)])),
  { requiredKeys: [] },
) as fc.Arbitrary<Answers>
