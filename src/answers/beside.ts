import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'

type Place = { readonly tokens: readonly Token[]; readonly scopes: Scopes }

/** Whether one of these stands before in the clause. */
export function isBeside(
  words: ReadonlySet<string>,
  at: number,
  { tokens, scopes }: Place,
): boolean {
  for (let back = at; back >= 0 && scopes.clause[back] === scopes.clause[at]; back -= 1) {
    if (words.has(tokens[back]?.text ?? '')) return true
  }
  return false
}

/** How many words back in the sentence one of these stands, or undefined when none does. */
export function wordsSince(
  words: ReadonlySet<string>,
  at: number,
  { tokens, scopes }: Place,
): number | undefined {
  const here = scopes.sentence[at] ?? 0
  let least = here
  for (let back = at; back >= 0 && (scopes.sentence[back] ?? 0) >= least; back -= 1) {
    if (words.has(tokens[back]?.text ?? '')) return at - back
    // "Caps: iron, two bolt, snug. .95 wide, 1.9 tall": a sentence that opens on a size goes on.
    const opens = scopes.sentence[back - 1] !== scopes.sentence[back]
    if (opens && scopes.sentence[back] === here && tokens[back]?.kind === 'number') least = here - 1
  }
  return undefined
}
