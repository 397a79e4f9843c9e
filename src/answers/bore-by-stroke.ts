import { spelledOut } from './answer-asked.ts'
import { candidateFor, type MoneyContext } from './candidates.ts'
import type { Findings } from './findings.ts'
import type { Lexicon } from './lexicon.ts'
import type { Figure } from './plain-figure.ts'
import type { Token } from './tokens.ts'

type Words = Lexicon['words']['parts']

/**
 * "4.030 x 3.480", "102 by 88 mm", "bore and stroke 4.030/3.480": bore, then
 * stroke, unless "stroke x bore" was said. Reads a third figure as the rod.
 *
 * @returns the figures that it took
 */
export function readBoreByStroke(
  figures: readonly Figure[],
  tokens: readonly Token[],
  words: Words,
  money: MoneyContext,
  into: Findings,
  used: ReadonlySet<Figure>,
): Set<Figure> {
  const taken = new Set<Figure>()
  figures.forEach((found, i) => {
    const next = figures[i + 1]
    if (!next || taken.has(found)) return
    const [bore, stroke] = [spelledOut(found, 'bore', tokens), spelledOut(next, 'stroke', tokens)]
    if (used.has(found) || used.has(next)) return
    const named = namedBefore(tokens, bore.from, words)
    if (!joined(tokens, bore, stroke, named !== undefined, words)) return
    const unit = stroke.unit ?? bore.unit
    const [a, b] = named === 'stroke' ? [stroke, bore] : [bore, stroke]
    if (!unit && !named && !plainlyBore(a, b)) return
    const pair = [withUnit(a, unit), withUnit(b, unit)] as const
    const first = candidateFor('bore', pair[0], money)
    const second = candidateFor('stroke', pair[1], money)
    if (!first || !second || !('answer' in first) || !('answer' in second)) return
    into.readings.push({ key: 'bore', answer: first.answer, from: a.from, to: a.to, strength: 3 })
    into.readings.push({
      key: 'stroke',
      answer: second.answer,
      from: b.from,
      to: b.to,
      strength: 3,
    })
    taken.add(found).add(next)
    rodToo(figures[i + 2], stroke, tokens, unit, words, money, into, taken)
  })
  return taken
}

function rodToo(
  rod: Figure | undefined,
  stroke: Figure,
  tokens: readonly Token[],
  unit: Figure['unit'],
  words: Words,
  money: MoneyContext,
  into: Findings,
  taken: Set<Figure>,
): void {
  if (!rod || !joined(tokens, stroke, rod, false, words)) return
  const found = candidateFor('rodLength', withUnit(rod, rod.unit ?? unit), money)
  if (!found || !('answer' in found)) return
  into.readings.push({
    key: 'rodLength',
    answer: found.answer,
    from: rod.from,
    to: rod.to,
    strength: 3,
  })
  taken.add(rod)
}

function withUnit(figure: Figure, unit: Figure['unit']): Figure {
  return unit && !figure.unit ? { ...figure, unit } : figure
}

function joined(
  tokens: readonly Token[],
  a: Figure,
  b: Figure,
  named: boolean,
  { by, bore }: Words,
): boolean {
  if (a.low !== undefined || b.low !== undefined || a.ratio || b.ratio || a.scaled || b.scaled)
    return false
  // "4.04 bore x 3.75".
  const own = bore.has(tokens[a.to]?.text ?? '') && by.has(tokens[a.to + 1]?.text ?? '')
  if (own && b.from === a.to + 2) return true
  if (b.from !== a.to + 1) return false
  const between = tokens[a.to]?.text ?? ''
  if (between === '/' && a.decimal && b.decimal && !a.unit && !b.unit) return true
  return by.has(between) || (named && (between === 'and' || between === '/' || between === ','))
}

/** Without units: decimals of inches, or millimetres; "4x4" is a truck. */
function plainlyBore(bore: Figure, stroke: Figure): boolean {
  return (
    (bore.decimal && stroke.decimal) ||
    (bore.value >= 50 && stroke.value >= 40) ||
    (bore.decimal && bore.value < 6)
  )
}

/** "bore and stroke", "bore x stroke", "stroke by bore" right before the figures. */
function namedBefore(
  tokens: readonly Token[],
  at: number,
  words: Words,
): 'bore' | 'stroke' | undefined {
  const said = tokens.slice(Math.max(0, at - 6), at).map(({ text }) => text)
  const bore = said.findLastIndex((word) => words.bore.has(word))
  const stroke = said.findLastIndex((word) => words.stroke.has(word))
  if (bore < 0 || stroke < 0 || Math.abs(bore - stroke) > 2) return undefined
  return bore < stroke ? 'bore' : 'stroke'
}
