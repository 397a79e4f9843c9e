/**
 * What has no sign of its own, or turns the signs around it about: controls (C0, C1), format
 * characters (the overrides of direction among them), halves of pairs, ends of lines and paragraphs.
 *
 * @see The Unicode Standard, section 4.5 (general category), and UAX #9, section 2
 */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu

/** A person's own text where it is shown back: what nobody could see stands as `[U+202E]`. */
export function visible(text: string): string {
  return text.replace(UNSEEN, (sign) => `[U+${hex(sign.codePointAt(0) as number)}]`)
}

/** The same for words of a message, whose own lines and tabs are spaces. */
export function visibleWords(text: string): string {
  return visible(text.replace(/[\t\n\r]+/g, ' '))
}

/** A value as JSON in one line of plain signs, for logs: the same value when it is read. */
export function jsonLine(value: unknown): string {
  return JSON.stringify(value).replace(UNSEEN, (sign) =>
    Array.from({ length: sign.length }, (_, at) => `\\u${hex(sign.charCodeAt(at))}`).join(''),
  )
}

function hex(code: number): string {
  return code.toString(16).toUpperCase().padStart(4, '0')
}
