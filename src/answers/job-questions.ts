import type { Lexicon } from './lexicon.ts'
import { mentionsIn } from './mentions.ts'
import { placeOf } from './question-words.ts'
import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'

/** A question about the job itself: "do I need a girdle?", "would studs be enough at 14 psi?" */
export interface JobQuestion {
  /** Whether it supposes something, asks what to do, or is about the guide's own words. */
  readonly asks: 'what-if' | 'result' | 'why' | 'explain'
  /** Whether it supposes only if it names facts: "does it hold with studs". */
  readonly needsFacts?: boolean
  /** Whether it asks whatever figures it names. */
  readonly openly?: boolean
  readonly from: number
  readonly to: number
}

/**
 * The questions of a message that only the call can answer: whether something
 * holds, is enough, is needed or is worth it. They open on a verb of asking.
 */
export function jobQuestionsIn(
  tokens: readonly Token[],
  { vocabulary, jobQuestions, leads, questions }: Lexicon,
  { sentence, outside }: Scopes,
): JobQuestion[] {
  const { supposing, asking } = vocabulary.jobQuestions
  const found: JobQuestion[] = []
  for (const from of openings(tokens, sentence, leads)) {
    const word = tokens[from]?.text ?? ''
    if (!supposing.includes(word) && !asking.includes(word)) continue
    // "I could always go to a girdle" asks nothing.
    if (outside[from] === 'other' || tokens[from - 1]?.text === 'i') continue
    let end = from
    while (end < tokens.length && sentence[end] === sentence[from]) end += 1
    const asks = wordsAsked(from, end, tokens, questions)
    if (asks) {
      found.push({ asks, from, to: from + 1, openly: true })
      continue
    }
    const mentions = mentionsIn(jobQuestions, tokens.slice(from, end))
    const kinds = mentions.flatMap((m) => m.meanings)
    // The "I go" of "does it hold if I go to 14 psi" wants nothing.
    const condition = tokens.slice(from, end).findIndex(({ text }) => text === 'if')
    const wants = mentions.some(
      (m) => m.meanings.includes('wants') && (condition < 0 || m.from < condition),
    )
    if (!wants && !(kinds.includes('holds') && isOfThis(word, from, end, tokens))) continue
    const place = { from, to: from + 1 }
    const supposes = !wants && supposing.includes(word)
    found.push({ asks: supposes ? 'what-if' : 'result', ...place })
    if (!wants && !supposes && hasCondition(from, end, tokens))
      found.push({ asks: 'what-if', needsFacts: true, ...place })
  }
  return found
}

/** "Is the bolt span something you need", "does moly mean the grease": of the guide's own words. */
function wordsAsked(
  from: number,
  end: number,
  tokens: readonly Token[],
  { relevance, terms }: Lexicon['questions'],
): 'why' | 'explain' | undefined {
  if (placeOf(relevance, tokens, from, end) >= 0) return 'why'
  return placeOf(terms, tokens, from, end) >= 0 ? 'explain' : undefined
}

/** "Does it hold if I go to 14 psi", "is it any better with studs". */
function hasCondition(from: number, end: number, tokens: readonly Token[]): boolean {
  return tokens.slice(from, end).some(({ text }) => text === 'if' || text === 'with')
}

/** "Do two bolt caps walk at 7000?" is of engines at large; "does it hold?" is not. */
function isOfThis(word: string, from: number, end: number, tokens: readonly Token[]): boolean {
  if (word !== 'do' && word !== 'does') return true
  return tokens.slice(from, end).some(({ text }) => OWN.has(text))
}

const OWN = new Set(['my', 'mine', 'it', 'this', 'these', 'they', 'i', 'we', 'our'])

/** The first word of each sentence that is no small word before a question. */
export function openings(
  tokens: readonly Token[],
  sentence: readonly number[],
  leads: ReadonlySet<string>,
): number[] {
  const found: number[] = []
  for (let at = 0; at < tokens.length; at += 1) {
    const opens = at === 0 || sentence[at] !== sentence[at - 1]
    if (!opens) continue
    let from = at
    while (
      from < tokens.length &&
      sentence[from] === sentence[at] &&
      leads.has(tokens[from]?.text ?? '') &&
      !['can', 'could', 'would'].includes(tokens[from]?.text ?? '')
    ) {
      from += 1
    }
    found.push(from)
  }
  return found
}
