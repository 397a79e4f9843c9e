import type { Answers } from '../../shared/answers.ts'
import { FACT_KEYS, type FactKey, isFactKey } from '../../shared/fact-keys.ts'
import { describeFound, type Problem } from '../../shared/problem.ts'

/** What a link says beside the case: who set some of its answers, and a note to who opens it. */
export interface LinkExtras {
  /** Answers that a helper or a shop gave, not the person who answers now. */
  readonly by: readonly FactKey[]
  /** A helper's own words, plain text; '' when there are none. */
  readonly note: string
  /** Id of the shop in whose frame the case stands; '' outside of any. */
  readonly shop: string
}

/** Longest note, characters. */
export const LONGEST_NOTE = 280
/** In place of a list: every answer of the link was set by the helper. */
const ALL = 'helper'

/**
 * The extras among the parameters of a link that are no facts. What cannot be read is
 * named and left out; a note that is too long is cut.
 *
 * @param shop - id of the shop whose frame asks; a link cannot put itself into another
 */
export function readExtras(
  other: ReadonlyMap<string, string>,
  answers: Answers,
  shop = '',
): { extras: LinkExtras; problems: Problem[] } {
  const { by, problems } = readBy(other.get('by') ?? '', answers)
  const { note, problem } = readNote(other.get('note') ?? '')
  return { extras: { by, note, shop }, problems: problem ? [...problems, problem] : problems }
}

function readBy(text: string, answers: Answers): { by: FactKey[]; problems: Problem[] } {
  if (text === '') return { by: [], problems: [] }
  const named = text === ALL ? FACT_KEYS : text.split(',').slice(0, FACT_KEYS.length)
  const problems = named
    .filter((key) => !isFactKey(key))
    .slice(0, 5)
    .map((key) => ({
      field: 'by',
      code: 'unknown-fact' as const,
      found: describeFound(key),
      fits: 'name facts, with commas between',
    }))
  const by = FACT_KEYS.filter((key) => named.includes(key) && answers[key] !== undefined)
  return { by, problems }
}

function readNote(text: string): { note: string; problem?: Problem } {
  const signs = [...text.replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ').trim()]
  if (signs.length <= LONGEST_NOTE) return { note: signs.join('') }
  const fits = `a note has at most ${LONGEST_NOTE} characters; the rest is cut`
  const problem = { field: 'note', code: 'too-long' as const, found: describeFound(text), fits }
  return { note: signs.slice(0, LONGEST_NOTE).join(''), problem }
}

/** The extras as the end of a query string; '' when there are none. */
export function extrasQuery({ by, note, shop }: LinkExtras): string {
  return [
    ...(by.length > 0 ? [`by=${[...by].sort().join(',')}`] : []),
    ...(note === '' ? [] : [`note=${encodeURIComponent(note).replaceAll('%20', '+')}`]),
    ...(shop === '' ? [] : [`shop=${shop}`]),
  ].join('&')
}

/** Parameters of a link that mean nothing here, such as a fact key with a slip in it. */
export function unknownParts(
  other: ReadonlyMap<string, string>,
  known: readonly string[],
): Problem[] {
  const usual = ['units', 'by', 'note', 'shop', ...known]
  return [...other.keys()]
    .filter((name) => !usual.includes(name))
    .slice(0, 10)
    .map((name) => ({
      field: describeFound(name),
      code: 'unknown-field',
      found: describeFound(other.get(name) ?? ''),
      fits: 'no part of a link is called that',
    }))
}
