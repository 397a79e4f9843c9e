import { fact, isFactKey } from '../../shared/fact-keys.ts'
import type { Problem } from '../../shared/problem.ts'

/** A problem as a person reads it: the fact's label in place of its key. */
export function problemWords({ field, code, found, fits }: Problem): string {
  const [place = '', rest] = PLACE.exec(field)?.slice(1) ?? ['', field]
  const key = rest?.split('.')[0] ?? field
  const name = isFactKey(key) ? fact(key).label : (rest ?? field)
  return `${PLACES[place] ?? ''}${name}: ${foundWords(found)}; ${fitsWords(key, code, fits)}.`
}

/** What of a request a field stands in. */
const PLACES: Readonly<Record<string, string>> = {
  a: 'Case A, ',
  b: 'Case B, ',
  supposed: 'What you supposed, ',
}
const PLACE = /^(?:(answers|a|b|supposed)\.)(.*)$/s

/** The same below a field, where the label already says which. */
export function fieldProblemWords({ field, code, found, fits }: Problem): string {
  const sentence = `${foundWords(found)}; ${fitsWords(field, code, fits)}.`
  return sentence.charAt(0).toUpperCase() + sentence.slice(1)
}

/** Choices by the words on their buttons in place of their keys. */
function fitsWords(key: string, code: Problem['code'], fits: string): string {
  if (code !== 'not-a-choice' || !isFactKey(key)) return fits
  const entry = fact(key)
  if (entry.kind !== 'choice') return fits
  const words = Object.values(entry.choices).map((one) => `“${one}”`)
  return `it may be ${words.join(', ')}`
}

function foundWords(found: string): string {
  return found === '' ? 'nothing was given' : `“${found}” does not fit`
}
