/** Most phrases that one pattern may stand for. */
const MOST = 1000

/**
 * Phrases that a pattern stands for: `two bolts {on,per} {each,every} [main] cap`.
 * Braces hold alternatives of one or more words, brackets alternatives that may be left out.
 *
 * @throws {RangeError} if a brace is not closed, or the pattern stands for too many
 */
export function expandPattern(pattern: string): string[] {
  let phrases = ['']
  for (const part of pattern.split(/(\{[^{}]*\}|\[[^[\]]*\])/)) {
    const inner = part.slice(1, -1)
    const choices = part.startsWith('{')
      ? inner.split(',')
      : part.startsWith('[')
        ? ['', ...inner.split(',')]
        : [part]
    if (choices.length === 1 && /[{}[\]]/.test(part))
      throw new RangeError(`"${pattern}": a brace or bracket is not closed`)
    phrases = phrases.flatMap((start) => choices.map((choice) => start + choice))
    if (phrases.length > MOST) throw new RangeError(`"${pattern}" stands for too many phrases`)
  }
  return phrases.map((phrase) => phrase.replace(/ +/g, ' ').trim())
}
