import { type Answer, type Answers, readAnswer } from './answers.ts'
import { FACT_KEYS, type FactKey, isFactKey } from './fact-keys.ts'
import { describeFound, type Problem } from './problem.ts'

/** What a link holds: everything a case is, nothing about the person. */
export interface LinkState {
  readonly answers: Answers
  /** Answers that an edit made irrelevant: they do not count, but come back if it is undone. */
  readonly parked: Answers
  /** Version of the rulebook that the link was made with, if it says so. */
  readonly version?: string
  readonly problems: readonly Problem[]
  /** Parameters that are no facts; pages read their own from here. */
  readonly other: ReadonlyMap<string, string>
}

const PARKED = 'parked.'
const VERSION = 'v'
/** Most parameters that are read; a longer link is cut, and says so. */
const MOST_PARAMETERS = 200

/** An answer as it stands in a link: `4.03in`, `950USD`, `10.5`, `12~10~14psi`, `v8-cross-plane`. */
export function answerText(answer: Answer): string {
  if (typeof answer === 'string') return answer
  if (typeof answer === 'number') return String(answer)
  const { value, low, high } = answer
  const figures =
    low === undefined && high === undefined
      ? `${value}`
      : `${value}~${low ?? value}~${high ?? value}`
  if ('currency' in answer) return `${figures}${answer.currency}`
  if ('unit' in answer)
    return `${figures}${answer.unit === '%' ? 'pct' : answer.unit.replaceAll(' ', '')}`
  return figures
}

/**
 * Answers to a query string: version first, then fact keys in alphabetical order.
 * Equal states give equal strings.
 */
export function toQuery(answers: Answers, version?: string, parked: Answers = {}): string {
  const query: string[] = version === undefined ? [] : [`${VERSION}=${encode(version)}`]
  for (const [prefix, record] of [
    ['', answers],
    [PARKED, parked],
  ] as const) {
    for (const key of [...FACT_KEYS].sort()) {
      const answer = record[key]
      if (answer !== undefined) query.push(`${prefix}${key}=${encode(answerText(answer))}`)
    }
  }
  return query.join('&')
}

/** Percent-encode what a query needs and leave the rest readable. */
function encode(text: string): string {
  return encodeURIComponent(text).replace(/%(2F|3A|7E|2C|40)/gi, (code) => decodeURIComponent(code))
}

/**
 * A query string to answers. Never throws: a part that cannot be read is named
 * among the problems and the rest is kept.
 */
export function fromQuery(query: string): LinkState {
  const good = { '': {} as Record<string, Answer>, [PARKED]: {} as Record<string, Answer> }
  const other = new Map<string, string>()
  const problems: Problem[] = []
  const all = [...new URLSearchParams(query)]
  if (all.length > MOST_PARAMETERS) problems.push(tooMany(all.length))
  for (const [name, text] of all.slice(0, MOST_PARAMETERS)) {
    const prefix = name.startsWith(PARKED) ? PARKED : ''
    const key = name.slice(prefix.length)
    if (!isFactKey(key)) {
      other.set(name, text)
      continue
    }
    const problem = keep(good[prefix] as Record<string, Answer>, key, text)
    if (problem) problems.push(problem)
  }
  const version = other.get(VERSION)
  other.delete(VERSION)
  const state = { answers: sorted(good['']), parked: sorted(good[PARKED] ?? {}), problems, other }
  return version === undefined ? state : { ...state, version }
}

function keep(into: Record<string, Answer>, key: FactKey, text: string): Problem | undefined {
  if (text === '') return undefined
  if (Object.hasOwn(into, key)) {
    return {
      field: key,
      code: 'duplicate',
      found: describeFound(text),
      fits: 'give each fact once',
    }
  }
  const read = readAnswer(key, text)
  if ('problem' in read) return read.problem
  into[key] = read.ok
  return undefined
}

function sorted(record: Readonly<Record<string, Answer>>): Answers {
  const result: { [key in FactKey]?: Answer } = {}
  for (const key of FACT_KEYS) {
    const answer = record[key]
    if (answer !== undefined) result[key] = answer
  }
  return result
}

function tooMany(count: number): Problem {
  const fits = `a link has at most ${MOST_PARAMETERS} parts`
  return { field: 'link', code: 'too-long', found: String(count), fits }
}
