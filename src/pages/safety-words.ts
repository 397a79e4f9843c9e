import type { Content } from './markdown.ts'

/**
 * The general cautions of content/safety.md as papers and posts say them, in its front matter:
 * one place for who comes before the guide and for what can hurt.
 */
export const SAFETY_WORDS = ['foot-of-paper', 'end-of-post', 'on-sheet-1', 'on-sheet-2'] as const

/**
 * @throws {RangeError} if it is not there; the check of content/ keeps this from happening
 */
export function safetyWords(content: Content, name: (typeof SAFETY_WORDS)[number]): string {
  const words = content.document('safety.md')?.front[name]
  if (!words) throw new RangeError(`safety.md has no ${name}`)
  return words
}
