import { candidateFor } from './candidates.ts'
import type { Findings } from './findings.ts'
import type { ChoiceMeaning } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import type { Parts } from './message-parts.ts'
import type { Figure } from './plain-figure.ts'
import type { FigureInput } from './read-figures.ts'
import type { Token } from './tokens.ts'

/** Largest diameter of a main fastener, in inches and in millimetres. */
const WIDEST = { in: 0.75, mm: 16 } as const
const LINKS = new Set(['are', 'is', ',', ':', '=', 'of', 'in', 'size'])

/** "Half inch studs", "bolts are 7/16": a size without its pitch, which is no thread and no length. */
export function isFastenerSize(
  { value, unit, from, to, ratio }: Figure,
  tokens: readonly Token[],
  mentions: readonly Mention<ChoiceMeaning>[],
): boolean {
  const metric = unit?.kind === 'unit' && unit.symbol === 'mm'
  const inch = unit === undefined || (unit.kind === 'unit' && unit.symbol === 'in')
  if (ratio || !(metric ? value <= WIDEST.mm : inch && value <= WIDEST.in)) return false
  return mentions.some((mention) => {
    if (!isFasteners(mention)) return false
    if (mention.from === to) return tokens[to]?.gap !== 'dash'
    const between = tokens.slice(mention.to, from)
    return mention.to <= from && between.length <= 2 && between.every((t) => LINKS.has(t.text))
  })
}

export function isFasteners({ meanings }: Mention<ChoiceMeaning>): boolean {
  return meanings.some((m) => m.kind === 'noun' && (m.noun === 'bolts' || m.noun === 'studs'))
}

/** "15 ft-lb plus 80 degrees": a turn after a torque is tightening by angle; says whether it is. */
export function readAngle(
  figure: Figure,
  { tokens, figures, scopes, lexicon }: Parts,
  into: Findings,
): boolean {
  const { from, to } = figure
  const { degrees, turns, torques } = lexicon.words.fasteners
  if (!degrees.has(tokens[to]?.text ?? '') || !turns.has(tokens[from - 1]?.text ?? '')) return false
  // "Torque, then a further 90 degrees".
  const first = tokens
    .slice(Math.max(0, from - 6), from)
    .some(
      ({ text }, i) =>
        torques.has(text) && scopes.sentence[Math.max(0, from - 6) + i] === scopes.sentence[from],
    )
  const torque =
    first ||
    figures.some(
      ({ unit, to: end }) =>
        end < from &&
        from - end <= 4 &&
        scopes.sentence[end - 1] === scopes.sentence[from] &&
        unit?.kind === 'unit' &&
        (unit.symbol === 'lb ft' || unit.symbol === 'N m'),
    )
  if (!torque) return false
  const reading = { key: 'tightening' as const, answer: 'torque-angle', strength: 3 as const }
  into.readings.push({ ...reading, from: from - 1, to: to + 1 })
  return true
}

/** A torque right after the fasteners it belongs to: "studs, 1/2-13, 100 lb ft". */
export function readTorque(
  figure: Figure,
  fastened: boolean,
  input: FigureInput,
  into: Findings,
): boolean {
  const symbol = figure.unit?.kind === 'unit' ? figure.unit.symbol : ''
  const torque = ['lb ft', 'N m'].includes(symbol) || (symbol === 'lb' && figure.value >= 40)
  if (!torque || !fastened) return false
  const found = candidateFor('fastenerTorque', figure, input.money)
  if (!found || !('answer' in found) || inFootPounds(figure) > 200) return false
  into.readings.push({
    key: 'fastenerTorque',
    answer: found.answer,
    from: figure.from,
    to: figure.to,
    strength: 2,
  })
  return true
}

function inFootPounds({ value, unit }: Figure): number {
  return unit?.kind === 'unit' && unit.symbol === 'N m' ? value * 0.7376 : value
}
