/** Longest address that mail programs and browsers of all systems are known to take, characters. */
const LONGEST_MAILTO = 1800

/** A text in the address that opens a mail program, and how much of it found room. */
export interface Mail {
  readonly href: string
  /** Lines of the text that are in the mail, of those that are not empty, its last line counted. */
  readonly lines: number
  readonly of: number
}

/**
 * The address that opens the person's own mail program with a text in it. A text that is too long
 * for some programs is cut at a line, with a line that says so; its last line, the link, is kept.
 *
 * @param cut - said in place of the lines left out; nothing is said when it is empty
 * @see RFC 6068, The mailto URI Scheme, sections 2 and 5: lines end in %0D%0A; colons, commas and
 *   semicolons stand for themselves
 */
export function mailWith(to: string, subject: string, text: string, cut = ''): Mail {
  const start = `mailto:${to}?subject=${encoded(subject)}&body=`
  const lines = text.trimEnd().split('\n')
  const link = lines.pop() ?? ''
  const of = written([...lines, link])
  const isLong = (body: readonly string[]) =>
    start.length + encoded(body.join('\r\n')).length > LONGEST_MAILTO
  let end = lines.length
  let body = [...lines, link]
  while (end > 0 && isLong(body)) {
    end--
    const kept = lines.slice(0, end)
    // Nor may a heading stand with nothing below it.
    while (/^$|:$/.test(kept.at(-1) ?? ' ')) kept.pop()
    body = [...kept, ...(cut === '' ? [] : ['', cut]), link]
  }
  const isCut = end < lines.length
  const lost = isCut ? of - written([...lines.slice(0, end), link]) : 0
  return { href: `${start}${encoded(body.join('\r\n'))}`, lines: of - lost, of }
}

/** The address alone; see {@link mailWith}. */
export function mailtoHref(to: string, subject: string, text: string): string {
  return mailWith(to, subject, text).href
}

function written(lines: readonly string[]): number {
  return lines.filter((line) => line.trim() !== '').length
}

/** What costs nine characters each is written with a plain key. */
const PLAIN: Readonly<Record<string, string>> = {
  '’': "'",
  '‘': "'",
  '“': '"',
  '”': '"',
  '−': '-',
  '–': '-',
  '\u00a0': ' ',
}

function encoded(text: string): string {
  const plain = text.replace(/[’‘“”−–\u00a0]/g, (sign) => PLAIN[sign] ?? sign)
  return encodeURIComponent(plain).replace(/%(?:3A|2C|3B)/g, decodeURIComponent)
}
