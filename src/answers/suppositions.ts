import { openings } from './job-questions.ts'
import type { Lexicon } from './lexicon.ts'
import { longestAt } from './phrases.ts'
import { sentenceEnd } from './question-words.ts'
import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'

/** A supposition that is known by how its sentence is built. */
export interface Supposition {
  readonly from: number
  readonly to: number
}

/**
 * Suppositions with a question to them: "if they were nodular would it hold", "and if
 * caps were ductile?", "and at 7800 rpm?"
 */
export function suppositionsIn(
  tokens: readonly Token[],
  lexicon: Lexicon,
  { sentence, outside, markers }: Scopes,
): Supposition[] {
  const neutral = new Set(
    markers.filter(({ meanings }) => meanings.includes('neutral')).map(({ from }) => from),
  )
  return openings(tokens, sentence, lexicon.leads).flatMap((from) => {
    if (outside[from] === 'other') return []
    if (neutral.has(from) || longestAt(lexicon.intents, tokens, from)?.meanings.includes('none'))
      return []
    const end = sentenceEnd(sentence, from)
    const asked = tokens[end - 1]?.text === '?'
    const supposes = longestAt(lexicon.questions.supposes, tokens, from)
    if (supposes) {
      const fits =
        (asked && !concludes(from, end, tokens)) || askedIn(supposes.to, end, tokens, lexicon) >= 0
      return fits ? [{ from, to: supposes.to }] : []
    }
    const short = asked && end - from <= LONGEST_ELLIPSIS
    // The "on" of "and on E85?" was passed over, for that of "hold on" is a small word.
    const elliptic = ELLIPSES.has(tokens[from]?.text ?? '') || tokens[from - 1]?.text === 'on'
    return short && elliptic ? [{ from, to: from + 1 }] : []
  })
}

/** "If I ran 20 psi, then I need steel caps?": a conclusion to be agreed with. */
function concludes(from: number, to: number, tokens: readonly Token[]): boolean {
  const words = tokens.slice(from, to)
  return words.some(({ text }, at) => text === 'then' && words[at - 1]?.text === ',')
}

/** "And at 7800 rpm?": a question of little more than a figure or a part. */
const ELLIPSES = new Set(['at', 'with', 'on'])
const LONGEST_ELLIPSIS = 8

/** Where a question follows its supposition, its verb before its subject, or -1. */
export function askedIn(
  from: number,
  to: number,
  tokens: readonly Token[],
  { questions }: Pick<Lexicon, 'questions'>,
): number {
  for (let at = from; at < to; at += 1) {
    const verb = longestAt(questions.auxiliaries, tokens, at)
    if (!verb || SUBJECTS_BEFORE.has(tokens[at - 1]?.text ?? '')) continue
    if (tokens[at - 1]?.text === ',' || longestAt(questions.subjects, tokens, verb.to)) return at
  }
  return -1
}

/** Before a verb they are its subject: "that would be ok" asks nothing. */
const SUBJECTS_BEFORE = new Set(
  'i it that they this which we you who he she what id ill youd theyd hed wed'.split(' '),
)

/**
 * Where the question after a supposition starts, or the end of the sentence: "what if
 * it costs 700, are steel caps still worth it" supposes no steel caps.
 */
export function questionAfter(
  from: number,
  tokens: readonly Token[],
  lexicon: Lexicon,
  { sentence }: Pick<Scopes, 'sentence'>,
): number {
  const end = sentenceEnd(sentence, from)
  for (let at = from + 1; at < end; at += 1) {
    if (tokens[at - 1]?.text === ',' && longestAt(lexicon.questions.auxiliaries, tokens, at))
      return at
  }
  return end
}
