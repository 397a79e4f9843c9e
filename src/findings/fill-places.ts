import type { FactTable } from '../facts/live-facts.ts'
import { fillEach } from '../rulebook/places.ts'

/**
 * A sentence with its {{places}} filled with live values.
 *
 * @throws {RangeError} if a place has no value; the rulebook check keeps this from happening
 */
export function fillPlaces(sentence: string, table: FactTable): string {
  return fillEach(sentence, (name) => {
    const found = table.get(name)
    if (!found) throw new RangeError(`the sentence needs ${name}, which is not known`)
    return typeof found.value === 'string' ? inSentence(found.text) : found.text
  })
}

/** "Gray cast iron" stands as "gray cast iron" within a sentence; "V8" and "SAE grade 8" stay. */
function inSentence(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text
}
