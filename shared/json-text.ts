/** Calls back with every sign of a JSON text that stands outside its strings, and with every string. */
export function scanJson(
  text: string,
  onSign: (sign: string) => void,
  onString: (start: number, end: number) => void,
): void {
  for (let at = 0; at < text.length; at++) {
    if (text[at] !== '"') {
      onSign(text[at] as string)
      continue
    }
    const end = endOfString(text, at)
    onString(at, end)
    at = end
  }
}

/**
 * Calls back with every key of a text that is known to be JSON, where it starts, and
 * whether its object has it already: JSON.parse keeps the last one without a word.
 */
export function eachKey(
  text: string,
  onKey: (key: string, isAgain: boolean, start: number) => void,
): void {
  const open: (Set<string> | null)[] = []
  scanJson(
    text,
    (sign) => {
      if (sign === '{') open.push(new Set())
      else if (sign === '[') open.push(null)
      else if (sign === '}' || sign === ']') open.pop()
    },
    (start, end) => {
      const keys = open.at(-1)
      if (!keys || !isKey(text, end)) return
      const key = JSON.parse(text.slice(start, end + 1)) as string
      onKey(key, keys.has(key), start)
      keys.add(key)
    },
  )
}

/** The value of a file that a person wrote, or what is wrong with its text as JSON. */
export function readJsonFile(
  text: string,
): { readonly value: unknown } | { readonly fault: string } {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch (error) {
    return { fault: `is not JSON: ${(error as Error).message}` }
  }
  const again: string[] = []
  eachKey(text, (key, isAgain, start) => {
    if (isAgain)
      again.push(`${JSON.stringify(key)} (line ${text.slice(0, start).split('\n').length})`)
  })
  if (again.length === 0) return { value }
  return { fault: `a key stands twice in one object: ${again.slice(0, MOST_NAMED).join(', ')}` }
}

/** More repeated keys than these say that the file was put together by mistake. */
const MOST_NAMED = 10

function endOfString(text: string, start: number): number {
  let at = start + 1
  while (text[at] !== '"') at += text[at] === '\\' ? 2 : 1
  return at
}

/** Whether a colon follows, however far away: JSON allows any white space before it. */
function isKey(text: string, end: number): boolean {
  let at = end + 1
  while (/\s/.test(text[at] ?? '')) at++
  return text[at] === ':'
}
