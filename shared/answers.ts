import { FACT_KEYS, type Fact, type FactKey, fact, isFactKey } from './fact-keys.ts'
import { describeFound, type Problem } from './problem.ts'
import { readMoney, readNumber, readQuantity } from './quantity.ts'
import { printThread, readThread } from './thread.ts'

/** What a person said of one fact, in the person's own unit. */
export type Answer =
  | string
  | number
  | { readonly value: number; readonly low?: number; readonly high?: number }
  | { readonly value: number; readonly unit: string; readonly low?: number; readonly high?: number }
  | {
      readonly value: number
      readonly currency: string
      readonly low?: number
      readonly high?: number
    }

/** The whole state of a case: what was said, by fact key. */
export type Answers = { readonly [key in FactKey]?: Answer }

/** The answer that says the person does not know. */
export const UNKNOWN = 'unknown'

export type Read<T> = { readonly ok: T } | { readonly problem: Problem }

/** Longest text that any single answer may have. */
export const LONGEST_ANSWER = 80

/**
 * Read one answer from outside.
 *
 * @param key - the fact it answers
 * @param raw - `"unknown"`, a choice, a text such as `"4.03 in"`, or an object as in the API
 * @returns the answer in its one canonical shape, or the problem and what would fit
 */
export function readAnswer(key: FactKey, raw: unknown): Read<Answer> {
  const entry = fact(key)
  if (typeof raw === 'string' && raw.length > LONGEST_ANSWER) {
    return no(key, 'too-long', raw, `give at most ${LONGEST_ANSWER} characters`)
  }
  if (raw === UNKNOWN) return { ok: UNKNOWN }
  switch (entry.kind) {
    case 'choice':
      return readChoice(entry.key, entry.choices, raw)
    case 'thread':
      return readThreadAnswer(key, raw)
    case 'money':
      return readMoney(entry, raw)
    case 'number':
      return readNumber(entry, raw)
    default:
      return readQuantity(entry, raw)
  }
}

function readChoice(
  key: FactKey,
  choices: Readonly<Record<string, string>>,
  raw: unknown,
): Read<Answer> {
  if (typeof raw === 'string' && Object.hasOwn(choices, raw)) return { ok: raw }
  const taken = Object.keys(choices).filter((choice) => choice !== UNKNOWN)
  return no(key, 'not-a-choice', raw, `choose one of ${taken.join(', ')}, or ${UNKNOWN}`)
}

function readThreadAnswer(key: FactKey, raw: unknown): Read<Answer> {
  const thread = typeof raw === 'string' ? readThread(raw) : undefined
  if (thread) return { ok: printThread(thread) }
  return no(
    key,
    'not-a-thread',
    raw,
    'write a thread from 5 to 20 mm such as 1/2-13, 7/16-14 or M11x1.25',
  )
}

function no(field: string, code: Problem['code'], found: unknown, fits: string): Read<never> {
  return { problem: { field, code, found: describeFound(found), fits } }
}

/**
 * Read a record of answers. Good ones are kept whatever the others are.
 *
 * @param raw - any value from outside; keys may be anything
 * @returns the good answers in dictionary order, and a problem for each bad one
 */
export function readAnswers(raw: unknown): { answers: Answers; problems: Problem[] } {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    const fits = 'give an object of answers by fact key'
    return {
      answers: {},
      problems: [{ field: 'answers', code: 'wrong-shape', found: describeFound(raw), fits }],
    }
  }
  const good = new Map<FactKey, Answer>()
  const problems: Problem[] = []
  for (const [key, value] of Object.entries(raw)) {
    const read = isFactKey(key) ? readAnswer(key, value) : unknownFact(key)
    if ('problem' in read) problems.push(read.problem)
    else good.set(key as FactKey, read.ok)
  }
  return { answers: inDictionaryOrder(good), problems }
}

function unknownFact(key: string): Read<never> {
  return no(describeFound(key), 'unknown-fact', key, `use a fact key: ${FACT_KEYS.join(', ')}`)
}

function inDictionaryOrder(good: ReadonlyMap<FactKey, Answer>): Answers {
  const ordered: { [key in FactKey]?: Answer } = {}
  for (const key of FACT_KEYS) {
    const value = good.get(key)
    if (value !== undefined) ordered[key] = value
  }
  return ordered
}

/** The answers with one changed, or taken out when the answer is undefined. */
export function withAnswer(answers: Answers, key: FactKey, answer: Answer | undefined): Answers {
  const next = new Map(Object.entries(answers) as [FactKey, Answer][])
  if (answer === undefined) next.delete(key)
  else next.set(key, answer)
  return inDictionaryOrder(next)
}

/** Whether an entry is one that a choice answers; narrows for callers that list choices. */
export function choicesOf(entry: Fact): Readonly<Record<string, string>> {
  return entry.kind === 'choice' ? entry.choices : {}
}
