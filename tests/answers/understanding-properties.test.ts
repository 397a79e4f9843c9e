import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Answer, readAnswer } from '../../shared/answers.ts'
import { FACT_KEYS, type FactKey, fact } from '../../shared/fact-keys.ts'
import { convert, printAnswer } from '../../shared/print.ts'
import { answerText } from '../../shared/share-link.ts'
import { readMessage } from '../support/reader.ts'

/** Any canonical answer of a fact, in any of its units, with or without a spread. */
function anyAnswer(key: FactKey): fc.Arbitrary<Answer> {
  const entry = fact(key)
  switch (entry.kind) {
    case 'choice':
      return fc.constantFrom(...Object.keys(entry.choices))
    case 'thread':
      return fc.constantFrom('1/2-13', '7/16-14', '1/2-20', 'M11x1.25', 'M10x1.5', 'M12x1.75')
    case 'money':
      return fc
        .tuple(
          fc.integer({ min: 20, max: entry.high }),
          fc.constantFrom('USD', 'EUR', 'GBP', 'AUD'),
        )
        .map(([value, currency]) => ({ value, currency }))
    case 'number':
      // Pages print a ratio with two decimals.
      return figures(entry.low, entry.high, 100).map((figure) =>
        figure.low === undefined ? figure.value : figure,
      )
    default:
      return fc
        .constantFrom(...entry.units)
        .chain((unit) =>
          figures(
            convert(entry.low, entry.units[0] as string, unit),
            convert(entry.high, entry.units[0] as string, unit),
          ).map((figure) => ({ ...figure, unit })),
        )
  }
}

interface Spread {
  value: number
  low?: number
  high?: number
}

/** Figures as people give them, with few decimals, inside a range. */
function figures(low: number, high: number, parts = 1000): fc.Arbitrary<Spread> {
  const [min, max] = [Math.ceil(low * parts), Math.floor(high * parts)]
  const one = fc.integer({ min, max }).map((whole) => ({ value: whole / parts }))
  const three = fc
    .tuple(fc.integer({ min, max }), fc.integer({ min, max }), fc.integer({ min, max }))
    .map((all) => all.sort((a, b) => a - b).map((part) => part / parts) as [number, number, number])
    .map(([a, value, b]) => ({ value, low: a, high: b }))
  return fc.oneof(one, three)
}

const anyFact = fc
  .constantFrom(...FACT_KEYS)
  .chain((key) => anyAnswer(key).map((answer) => ({ key, answer })))
  .filter(({ key, answer }) => 'ok' in readAnswer(key, answer))

describe('format, then read', () => {
  it('gives back what a page prints, as the answer to its question', () => {
    fc.assert(
      fc.property(anyFact, ({ key, answer }) => {
        const { facts } = readMessage(printAnswer(key, answer), { asking: key })
        expect(facts).toEqual({ [key]: answer })
      }),
      { numRuns: 3000, seed: 41 },
    )
  })

  it('gives back what a link holds, as the answer to its question', () => {
    fc.assert(
      fc.property(anyFact, ({ key, answer }) => {
        const { facts } = readMessage(answerText(answer), { asking: key })
        expect(facts).toEqual({ [key]: answer })
      }),
      { numRuns: 3000, seed: 42 },
    )
  })

  it('gives back a fact by its name, unasked', () => {
    fc.assert(
      fc.property(anyFact, ({ key, answer }) => {
        const name = fact(key).short
        const { facts } = readMessage(`${name}: ${printAnswer(key, answer)}`)
        // "nitrous: 150 hp" also says how it breathes, "high-strength stud" also what it is.
        const { [key]: found, ...more } = facts
        expect(found).toEqual(answer)
        const also = { nitrousPower: 'induction', fastenerGrade: 'fastenerKind' }
        expect(Object.keys(more).filter((other) => other !== Reflect.get(also, key))).toEqual([])
      }),
      { numRuns: 3000, seed: 43 },
    )
  })
})

describe('clauses', () => {
  const clauses = [
    '4.030 x 3.480',
    'ten and a half to one',
    '12 lbs on a single turbo',
    'two bolt iron block',
    'spin it to 6500',
    'e85',
    'about six grand in it so far',
    'nodular caps',
    'main studs torqued to 110 ft lbs',
    'line bore is $950',
    '3.73 gears',
    '6 inch rods',
    'sales tax 8.25%',
  ]

  it('mean the same in any order', () => {
    const inOrder = readMessage(clauses.join(', ')).facts
    expect(Object.keys(inOrder).length).toBeGreaterThan(12)
    fc.assert(
      fc.property(
        fc.shuffledSubarray(clauses, { minLength: clauses.length }),
        fc.constantFrom(', ', '. ', '; ', '\n'),
        (shuffled, joiner) => {
          expect(readMessage(shuffled.join(joiner)).facts).toEqual(inOrder)
        },
      ),
      { numRuns: 400, seed: 44 },
    )
  })
})

describe('any text at all', () => {
  const fragments = fc.constantFrom(
    'bore',
    'boost',
    '4.030',
    '12',
    'psi',
    '$',
    'x',
    '-',
    '/',
    ',',
    '.',
    'no',
    'not',
    'my buddy',
    'if',
    '½',
    '＄',
    '\u200d',
    'two bolt',
    'to one',
    'thirty',
    'over',
    'what if',
    'why',
    '12-14',
    '~',
    '(',
    ')',
    'e85',
    '’',
    '\ud800',
    'İ',
    '١٢',
    '\n',
    ':',
    'studs',
    '1e9',
    '..',
  )
  const anyText = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 300 }),
    fc.string({ unit: 'grapheme', maxLength: 300 }),
    fc.array(fragments, { maxLength: 60 }).map((parts) => parts.join(' ')),
    fc.array(fragments, { maxLength: 60 }).map((parts) => parts.join('')),
  )

  it('is read without a throw; every fact is valid and has its words', () => {
    fc.assert(
      fc.property(
        anyText,
        fc.option(fc.constantFrom(...FACT_KEYS), { nil: undefined }),
        (text, asking) => {
          const found = readMessage(text, asking ? { asking } : {})
          for (const [key, answer] of Object.entries(found.facts)) {
            expect(readAnswer(key as FactKey, answer)).toEqual({ ok: answer })
            const span = found.spans.find((each) => each.key === key)
            expect(span).toBeDefined()
            expect(text.slice(span?.start, span?.end).trim()).not.toBe('')
          }
          for (const { start, end } of found.spans) {
            expect(start).toBeLessThan(end)
            expect(end).toBeLessThanOrEqual(text.length)
          }
          expect(readMessage(text, asking ? { asking } : {})).toEqual(found)
        },
      ),
      { numRuns: 3000, seed: 45 },
    )
  })
})
