import type { Lexicon } from './lexicon.ts'
import type { Token } from './tokens.ts'

type SentenceWords = Pick<Lexicon, 'vocabulary' | 'words'>

const SENTENCE_END = new Set(['!', '?', ';', '\n'])

/** "in. ", and the "no. 3" that numbers a cap. */
function isAbbreviated(
  tokens: readonly Token[],
  i: number,
  { vocabulary }: SentenceWords,
): boolean {
  if (tokens[i - 2]?.text === 'no' && tokens[i]?.kind === 'number') return true
  const unit = vocabulary.units.pointed.includes(tokens[i - 2]?.text ?? '')
  return unit && tokens[i - 3]?.kind === 'number'
}

/**
 * Number the sentences and clauses of a message.
 *
 * @param startsAnew - whether a word after a comma starts a sentence of its own; told
 * where the sentence before it starts
 */
export function breaksOf(
  tokens: readonly Token[],
  lexicon: SentenceWords,
  startsAnew: (at: number, start: number) => boolean = () => false,
): { sentence: number[]; clause: number[] } {
  const sentence: number[] = []
  const clause: number[] = []
  let [sentences, clauses, start] = [0, 0, 0]
  tokens.forEach((token, i) => {
    const before = tokens[i - 1]
    const ended =
      before?.kind === 'mark' &&
      (SENTENCE_END.has(before.text) ||
        (before.text === '.' && token.gap !== 'none' && !isAbbreviated(tokens, i, lexicon)) ||
        (before.text === ',' && startsAnew(i, start)))
    if (ended) {
      sentences += 1
      start = i
    }
    const parted = before?.kind === 'mark' && [',', '(', ')', ':'].includes(before.text)
    // "I4 / 86x86 / bedplate / alloy" is a list.
    const listed = before?.text === '/' && before.gap === 'space' && token.gap === 'space'
    const dashed = token.gap === 'dash' && !(token.kind === 'number' && before?.kind === 'number')
    if (
      ended ||
      (parted && before.text !== ':') ||
      dashed ||
      listed ||
      lexicon.words.asking.clauses.has(token.text)
    )
      clauses += 1
    sentence.push(sentences)
    clause.push(clauses)
  })
  return { sentence, clause }
}

/** A question about parts does not say that they are there: "is a girdle better?" */
const QUESTIONS = new Set([
  'who',
  'whos',
  'which',
  'is',
  'are',
  'does',
  'do',
  'should',
  'any',
  'anyone',
])
/** After "should" they make it a question. */
const ASKED = new Set('i we it they the my this that you these a'.split(' '))
/** Words that open a question only before one of these, or before its question mark. */
const ASKING = new Set([
  'what',
  'whats',
  'how',
  'where',
  'wheres',
  'when',
  'why',
  'can',
  'will',
  'would',
  'could',
])
const AUXILIARIES = new Set([
  'do',
  'does',
  'did',
  'is',
  'are',
  'can',
  'should',
  'would',
  'will',
  'much',
  'many',
])

/** Whether a sentence that opens here asks something. */
export function asksAt(i: number, tokens: readonly Token[], sentence: readonly number[]): boolean {
  const word = tokens[i]?.text ?? ''
  // "Should make 480" guesses.
  if (word === 'should') return ASKED.has(tokens[i + 1]?.text ?? '')
  if (QUESTIONS.has(word)) return true
  if (!ASKING.has(word)) return false
  if (AUXILIARIES.has(tokens[i + 1]?.text ?? '')) return true
  // "How strong are stock caps".
  if (word === 'how' && ['is', 'are'].includes(tokens[i + 2]?.text ?? '')) return true
  let end = i
  while (end + 1 < tokens.length && sentence[end + 1] === sentence[i]) end += 1
  return tokens[end]?.text === '?'
}
