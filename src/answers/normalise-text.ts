/** Longest message that is read; the rest is left out and said to be. */
export const LONGEST_MESSAGE = 2000

/** A message in plain characters, with the way back to the original. */
export interface PlainText {
  readonly text: string
  /** For each place in `text`, where its character starts in the original (UTF-16). */
  readonly starts: readonly number[]
  /** For each place in `text`, where its character ends in the original (UTF-16). */
  readonly ends: readonly number[]
  /** Whether the original was longer than what was read. */
  readonly cut: boolean
}

const PLAIN: Readonly<Record<string, string>> = {
  '\u2018': "'",
  '\u2019': "'",
  '\u201b': "'",
  '\u02bc': "'",
  '\u2032': "'",
  '\u201c': '"',
  '\u201d': '"',
  '\u2033': '"',
  '\u00d7': 'x',
  '\u2010': '-',
  '\u2011': '-',
  '\u2012': '-',
  '\u2013': '-',
  '\u2014': ' - ',
  '\u2212': '-',
  '\u2044': '/',
  '\u2215': '/',
  '\u00b7': '.',
  '\u00b1': '+/-',
  '\u2248': '~',
  '\u00b0': ' deg ',
  '\u00ba': ' deg ',
  // Percent sign, decimal and thousands separators of the Arabic script.
  '\u066a': '%',
  '\u066b': '.',
  '\u066c': ',',
}

/** Vulgar fractions stand apart from the digit before them: "4½" is four and a half, not 41/2. */
const VULGAR = /^[\u00bc-\u00be\u2150-\u215e]$/u
const MARK = /^\p{M}$/u
const DIGIT = /^\p{Nd}$/u
const INVISIBLE = /^\p{Cf}+$/u

/**
 * Lower-case NFKC text with typographic quotes, dashes and signs, and digits of any script, made plain.
 * Works character by character, so that a place in the result always leads back
 * to the place in the original that it came from.
 */
export function normaliseText(original: string): PlainText {
  const read = original.slice(0, LONGEST_MESSAGE)
  const starts: number[] = []
  const ends: number[] = []
  let text = ''
  let at = 0
  for (const cluster of clusters(read)) {
    const plain = plainOf(cluster)
    for (let i = 0; i < plain.length; i += 1) {
      starts.push(at)
      ends.push(at + cluster.length)
    }
    text += plain
    at += cluster.length
  }
  return { text, starts, ends, cut: original.length > LONGEST_MESSAGE }
}

/** Each code point with the combining marks that follow it. */
function* clusters(text: string): Generator<string> {
  let cluster = ''
  for (const character of text) {
    if (cluster !== '' && MARK.test(character) && cluster.length < 8) {
      cluster += character
      continue
    }
    if (cluster !== '') yield cluster
    cluster = character
  }
  if (cluster !== '') yield cluster
}

function plainOf(cluster: string): string {
  const direct = PLAIN[cluster]
  if (direct !== undefined) return direct
  if (cluster.length === 1 && cluster < '\u0080') return cluster.toLowerCase()
  // Nobody sees them, and "100\u200bNm" is 100 Nm.
  if (INVISIBLE.test(cluster)) return ''
  const folded = cluster.normalize('NFKC').toLowerCase()
  const plain = [...folded]
    .map((character) => PLAIN[character] ?? withPlainDigit(character))
    .join('')
  return VULGAR.test(cluster) ? ` ${plain} ` : plain
}

/**
 * A decimal digit of any script as the one we count with; anything else as it is. Unicode keeps
 * the ten digits of a script together, in their order, so that the run they stand in tells which
 * one it is.
 *
 * @see The Unicode Standard, section 4.6, Numeric Value (decimal digits)
 */
function withPlainDigit(character: string): string {
  if (!DIGIT.test(character)) return character
  const code = character.codePointAt(0) as number
  let zero = code
  while (DIGIT.test(String.fromCodePoint(zero - 1))) zero -= 1
  return String((code - zero) % 10)
}

/** A stretch of the plain text as a stretch of the original. */
export function originalSpan(
  plain: PlainText,
  start: number,
  end: number,
): { start: number; end: number } {
  return { start: plain.starts[start] ?? 0, end: plain.ends[end - 1] ?? 0 }
}
