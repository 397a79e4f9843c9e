import type { FactKey } from '../../shared/fact-keys.ts'
import type { Findings } from './findings.ts'
import type { Lexicon } from './lexicon.ts'
import { mentionsIn } from './mentions.ts'
import type { Parts } from './message-parts.ts'
import { longestAt } from './phrases.ts'
import type { Token } from './tokens.ts'

/**
 * "I said matched, change it to mixed": a bare word after a verb of changing, when it is
 * a choice of only one fact, or of only one that the message spoke of before.
 */
export function readChangedChoice({ tokens, lexicon }: Parts, { readings }: Findings): void {
  for (const { to: start } of mentionsIn(lexicon.questions.changesTo, tokens)) {
    if (readings.some(({ from, to }) => from < start + 1 && start < to)) continue
    const fits = [...lexicon.asked].flatMap(([key, tree]) => {
      const match = longestAt(tree, tokens, start)
      const [answer, other] = new Set(match?.meanings)
      if (!match || answer === undefined || other !== undefined) return []
      return isEnd(tokens[match.to], lexicon) ? [{ key, answer, from: start, to: match.to }] : []
    })
    const spoken = (key: FactKey): boolean => {
      const tree = lexicon.asked.get(key)
      return tree !== undefined && mentionsIn(tree, tokens.slice(0, start)).length > 0
    }
    const named = fits.length > 1 ? fits.filter(({ key }) => spoken(key)) : fits
    const [only, second] = named
    if (only && !second) readings.push({ ...only, strength: 2 })
  }
}

function isEnd(token: Token | undefined, { words }: Lexicon): boolean {
  if (!token || token.kind === 'mark') return true
  return words.asking.please.has(token.text) || words.times.now.has(token.text)
}
