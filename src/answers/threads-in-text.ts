import type { Findings } from './findings.ts'
import type { Parts } from './message-parts.ts'
import { isForOther } from './other-fasteners.ts'

/** A thread stands for the main fasteners', unless it is of another part: "7/16-14 head studs". */
export function readThreads(parts: Parts, into: Findings): void {
  const { tokens, scopes, input } = parts
  tokens.forEach((token, at) => {
    if (token.kind !== 'thread') return
    const stretch = { from: at, to: at + 1 }
    const outside = scopes.outside[at]
    // "It is M12x1.75 and not M11x1.5".
    if (tokens[at - 1]?.text === 'not') {
      into.doubts.push({ ...stretch, why: 'denied in the same words' })
      return
    }
    // "M12 by 1.75 on the mains and M10 by 1.5 on the heads".
    if (isOfOther(at, parts) || isForOther(at, at + 1, parts)) {
      into.doubts.push({ ...stretch, why: 'read as the thread of another part' })
    } else if (outside && !(outside === 'hypothetical' && input.whatIf)) {
      into.doubts.push({ ...stretch, why: 'read as about another engine or plan' })
    } else {
      const reading = { key: 'fastenerThread' as const, answer: token.text, strength: 3 as const }
      into.readings.push({ ...reading, ...stretch })
    }
  })
}

function isOfOther(at: number, { choiceMentions, scopes }: Parts): boolean {
  return choiceMentions.some(({ from, to, meanings }) => {
    const other = meanings.some(
      (meaning) =>
        meaning.kind === 'shadow' || (meaning.kind === 'noun' && meaning.noun === 'other'),
    )
    // "10 main bolts of M11x1.5 and 1 crank": only a part right after it owns it.
    const near = from > at ? from === at + 1 : at - to <= 3
    return other && near && scopes.clause[from] === scopes.clause[at]
  })
}
