import type { Lexicon } from './lexicon.ts'
import type { Parts } from './message-parts.ts'
import { longestAt } from './phrases.ts'
import { NOWHERE, nextPlaces, placeOf, sentenceEnd, sentenceStart } from './question-words.ts'
import type { Request } from './requests.ts'
import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'

/**
 * Changes that are told rather than asked for: "I told you two bolts, turns out it is
 * four", "it isn't iron after all, it's aluminium", "$425 now instead of $390".
 */
export function revisionsIn(tokens: readonly Token[], lexicon: Lexicon, scopes: Scopes): Request[] {
  const found: Request[] = []
  const next = {
    revises: nextPlaces(lexicon.questions.revises, tokens),
    contrasts: nextPlaces(lexicon.questions.contrasts, tokens),
  }
  for (let at = 0; at < tokens.length; at += 1) {
    const one =
      revisionAt(at, tokens, lexicon, scopes, next) ??
      wrongAt(at, tokens, lexicon, scopes) ??
      retractionAt(at, tokens, lexicon, scopes) ??
      imperativeAt(at, tokens, lexicon, scopes)
    if (one) found.push({ intent: 'change', opens: true, aside: false, ...one })
  }
  return found
}

type Place = Pick<Request, 'from' | 'to' | 'anewFrom' | 'plainly'>

/** "I said 12 psi but it's really 10", "the fuel I gave you was wrong". */
function revisionAt(
  from: number,
  tokens: readonly Token[],
  { questions, leads }: Lexicon,
  { clause }: Scopes,
  next: { readonly revises: readonly number[]; readonly contrasts: readonly number[] },
): Place | undefined {
  const earlier = longestAt(questions.earlier, tokens, from)
  if (!earlier || !startsClause(from, tokens, leads, clause)) return undefined
  const revises = next.revises[earlier.to] ?? NOWHERE
  const anewFrom = Math.min(revises, next.contrasts[earlier.to] ?? NOWHERE)
  // "It should be 10.5 now, I said 10 before".
  const after = from > 0 && placeOf(questions.previously, tokens, earlier.to, earlier.to + 5) >= 0
  if (after) return { from, to: earlier.to, anewFrom: 0, plainly: true }
  if (anewFrom === NOWHERE) return undefined
  return { from, to: earlier.to, anewFrom, plainly: revises < NOWHERE }
}

/** "Compression ratio is wrong", "my stroke was a typo": the name of a fact, taken back. */
function wrongAt(
  from: number,
  tokens: readonly Token[],
  { names, questions, leads, words }: Lexicon,
  { clause }: Scopes,
): Place | undefined {
  const named = longestAt(names, tokens, from)
  const wrong = named && longestAt(questions.wrongly, tokens, named.to)
  if (!wrong) return undefined
  let start = ARTICLES.has(tokens[from - 1]?.text ?? '') ? from - 1 : from
  // "I quoted the bore wrongly".
  while (words.asking.stated.has(tokens[start - 1]?.text ?? '')) start -= 1
  return startsClause(start, tokens, leads, clause)
    ? { from: start, to: wrong.to, anewFrom: wrong.to, plainly: true }
    : undefined
}

/**
 * "I gave you 3.48 for the stroke but it's 3.75", "it is 12 psi now, what if it were 18":
 * a figure right after them is set against the one before.
 */
export function isRevised(
  { from, unit }: { readonly from: number; readonly unit?: unknown },
  { requests, tokens, lexicon }: Parts,
): boolean {
  const against = placeOf(lexicon.questions.contrasts, tokens, Math.max(0, from - REACH), from) >= 0
  return requests.some(({ intent, to, anewFrom = 0 }) =>
    intent === 'what-if'
      ? !unit && to <= from && from - to <= REACH
      : anewFrom > 0 && anewFrom < from && against,
  )
}

/** Furthest that a figure stands after the words that set it against another: "its going to be 16". */
const REACH = 4

/** "It aint iron like I said", "12 psi after all, not 15": with a denial in the sentence. */
function retractionAt(
  from: number,
  tokens: readonly Token[],
  { questions }: Lexicon,
  { sentence, markers }: Scopes,
): Place | undefined {
  const replaces = longestAt(questions.replaces, tokens, from)
  if (replaces) return { from, to: replaces.to, anewFrom: 0, plainly: true }
  const retracts = longestAt(questions.retracts, tokens, from)
  const [start, here] = [retracts ? sentenceStart(sentence, from) : from, sentence[from]]
  const denied = markers.some(
    (one) => one.meanings.includes('negation') && one.from >= start && sentence[one.from] === here,
  )
  return retracts && denied ? { from, to: retracts.to, anewFrom: 0, plainly: true } : undefined
}

/** "Swap e85 for race gas", "could you set boost at 12": a verb of changing and what it is about. */
function imperativeAt(
  from: number,
  tokens: readonly Token[],
  lexicon: Lexicon,
  scopes: Scopes,
): Place | undefined {
  const { questions, words } = lexicon
  const { clause } = scopes
  const before = tokens[from - 1]?.text ?? ''
  const { asked: asks, please, you } = words.asking
  const asked = [asks, please, you].some((list) => list.has(before))
  const set = longestAt(questions.sets, tokens, from)
  const verb =
    longestAt(questions.changes, tokens, from) ??
    (set && (asked || (!SUBJECTS.has(before) && isReplaced(set.to, tokens, scopes)))
      ? set
      : undefined)
  if (!verb || !startsClause(from, tokens, lexicon.leads, clause)) return undefined
  let at = verb.to
  while (ARTICLES.has(tokens[at]?.text ?? '') || tokens[at]?.kind === 'number') at += 1
  const named = [lexicon.names, lexicon.figures, lexicon.choices].some(
    (tree) => longestAt<unknown>(tree, tokens, at) !== undefined,
  )
  return named ? { from, to: at, anewFrom: 0, plainly: true } : undefined
}

/** Before a verb they make it an account: "we put the compression at 10". */
const SUBJECTS = new Set('i we to he they ive weve'.split(' '))

/** "Put the compression at 15 not 14.5": with what it takes the place of. */
function isReplaced(at: number, tokens: readonly Token[], { sentence, markers }: Scopes): boolean {
  const end = sentenceEnd(sentence, at - 1)
  // "Set the compression ratio to 9 instead".
  if (tokens[end - 1]?.text === 'instead' || tokens[end - 2]?.text === 'instead') return true
  return markers.some(
    (one) =>
      one.from > at &&
      one.from < end &&
      one.meanings.includes('negation') &&
      tokens[one.to]?.kind === 'number',
  )
}

/** Before a verb they make it something asked for. */
const ARTICLES = new Set('the my that our this all'.split(' '))

/** Whether a token opens its clause, but for small words. */
function startsClause(
  from: number,
  tokens: readonly Token[],
  leads: ReadonlySet<string>,
  clause: readonly number[],
): boolean {
  let at = from
  while (at > 0 && clause[at - 1] === clause[from]) {
    if (!leads.has(tokens[at - 1]?.text ?? '')) return false
    at -= 1
  }
  return true
}
