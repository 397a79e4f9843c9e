import type { Token } from './tokens.ts'

/**
 * "Maybe a girdle, maybe steel caps", "one says studs, one says bolts, I haven't decided": what is
 * weighed is not settled.
 */
export function weighs(i: number, tokens: readonly Token[], sentence: readonly number[]): boolean {
  let maybes = 0
  let says = 0
  for (let at = i; at < tokens.length && sentence[at] === sentence[i]; at += 1) {
    if (tokens[at]?.text === 'maybe') maybes += 1
    if (tokens[at]?.text === 'says') says += 1
    if (says >= 2 && tokens[at]?.text === 'decided') return true
  }
  return maybes >= 2
}

/** "Had I bought the kit it would be a 3.75". */
export function supposes(i: number, tokens: readonly Token[]): boolean {
  const [first, second] = [tokens[i]?.text ?? '', tokens[i + 1]?.text ?? '']
  if (!['had', 'were'].includes(first) || !['i', 'we', 'it'].includes(second)) return false
  return tokens.slice(i).some(({ text }) => text === 'would' || text === 'id')
}
