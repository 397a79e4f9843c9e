import type { Findings, Reading } from './findings.ts'
import type { Lexicon } from './lexicon.ts'
import type { Token } from './tokens.ts'

/** Materials that caps and block may both be of. */
const SHARED = new Set(['gray-iron', 'aluminium'])

/**
 * "Gray iron caps, same as the block": a material said of one and likened to the other
 * is both's.
 */
export function readLikened(
  tokens: readonly Token[],
  { block, caps }: Lexicon['words']['parts'],
  { readings }: Findings,
): void {
  for (let at = 0; at + 3 < tokens.length; at += 1) {
    const words = tokens.slice(at, at + 4).map(({ text }) => text)
    const like =
      words.slice(0, 3).join(' ') === 'same as the' ||
      words.slice(0, 3).join(' ') === 'just like the'
    const part = words[3] ?? ''
    const to = block.has(part) ? 'blockMaterial' : caps.has(part) ? 'capMaterial' : undefined
    if (!like || !to) continue
    const from = to === 'blockMaterial' ? 'capMaterial' : 'blockMaterial'
    const last = readings
      .filter(({ key, to: end }) => (key === from || key === to) && end <= at)
      .sort((a, b) => a.to - b.to)
      .at(-1)
    if (!last || at - last.to > 3 || !SHARED.has(String(last.answer))) continue
    const both: Reading = { ...last, to: at + 4 }
    for (const key of [from, to] as const) {
      if (!readings.some((reading) => reading.key === key)) readings.push({ ...both, key })
    }
  }
}
