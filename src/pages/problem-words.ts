import { fact, isFactKey } from '../../shared/fact-keys.ts'
import type { Problem } from '../../shared/problem.ts'

/** A problem as a person reads it: the fact's label in place of its key. */
export function problemWords({ field, found, fits }: Problem): string {
  const key = field.replace(/^answers\./, '').split('.')[0] ?? field
  const name = isFactKey(key) ? fact(key).label : field
  return `${name}: ${foundWords(found)}; ${fits}.`
}

/** The same below a field, where the label already says which. */
export function fieldProblemWords({ found, fits }: Problem): string {
  const sentence = `${foundWords(found)}; ${fits}.`
  return sentence.charAt(0).toUpperCase() + sentence.slice(1)
}

function foundWords(found: string): string {
  return found === '' ? 'nothing was given' : `“${found}” does not fit`
}
