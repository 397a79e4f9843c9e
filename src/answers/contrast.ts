import type { FactKey } from '../../shared/fact-keys.ts'
import { candidateFor } from './candidates.ts'
import type { Findings } from './findings.ts'
import { coverage } from './mentions.ts'
import type { Parts } from './message-parts.ts'
import type { Figure } from './plain-figure.ts'
import { defaultKey } from './read-figures.ts'
import { setAside } from './set-aside.ts'

const REACH = 7

/**
 * "Used to run 15 psi, now it's 22", "said it was 10:1 but I measured 9.4": a bare
 * figure set against one that does not count is of the same fact.
 */
export function readContrast(figure: Figure, parts: Parts, into: Findings): boolean {
  const { figures, pairs, input, scopes } = parts
  const before = figures[figures.indexOf(figure) - 1]
  const alike = !figure.unit || figure.unit.kind === before?.unit?.kind
  if (!alike || figure.ratio || !isSetAgainst(figure, before, parts)) return false
  const here = scopes.sentence[figure.from] ?? 0
  const there = before && scopes.sentence[before.from]
  if (!before || !(there === here || (there === here - 1 && opensOnOwn(figure, parts))))
    return false
  if (setAside(before, input) === undefined) return false
  const use = pairs.find((pair) => pair.figure === before)?.use
  const key = use
    ? use.kind === 'fact'
      ? use.key
      : undefined
    : (namedBefore(before, figure, parts) ?? keyOf(before, parts))
  const unit = before.unit ? { unit: before.unit } : {}
  const found = key && candidateFor(key, { ...unit, ...figure }, input.money)
  if (!key || !found || !('answer' in found)) return false
  const { from, to } = figure
  into.readings.push({ key, answer: found.answer, from, to, strength: 2 })
  return true
}

/** "Mine has a 3.5 in it": a sentence that turns from another's engine to one's own. */
function opensOnOwn({ from, to }: Figure, { tokens, scopes, lexicon }: Parts): boolean {
  const { own } = lexicon.words.engines
  const { shops } = lexicon.words.persons
  const { now } = lexicon.words.times
  let at = from
  while (at > 0 && scopes.sentence[at - 1] === scopes.sentence[from]) at -= 1
  const next = tokens[to]
  const goesOn = next?.kind !== 'mark' && !STOPS.has(next?.text ?? '') && !now.has(next?.text ?? '')
  if (next && goesOn) return false
  const [first, second] = [tokens[at]?.text, tokens[at + 1]?.text]
  const didnt = first === 'i' && second === 'didnt'
  if (first === 'this' && second === 'one') return true
  return didnt || [own, now, shops].some((words) => words.has(first ?? ''))
}

/** After a figure they leave it bare. */
const STOPS = new Set(['in', 'on', 'with'])

/** The redline of "redline isn't 7200 after all, it's 6700": named before what is denied. */
function namedBefore(
  before: Figure,
  figure: Figure,
  { figureMentions, scopes, input }: Parts,
): FactKey | undefined {
  if (!input.negations.denies(before)) return undefined
  const named = figureMentions.filter(
    ({ from, to }) =>
      scopes.sentence[from] === scopes.sentence[figure.from] &&
      ((to <= before.from && before.from - to <= 4) || (from === before.to && to <= figure.from)),
  )
  for (const { meanings } of named.reverse()) {
    for (const meaning of meanings) {
      if (meaning.kind !== 'cue' || meaning.weak) continue
      const found = candidateFor(meaning.fact, figure, input.money)
      if (found && 'answer' in found) return meaning.fact
    }
  }
  return undefined
}

/** The fact of a figure that no words name; pounds beside a turbo are of boost. */
function keyOf(figure: Figure, { choiceMentions }: Parts): FactKey | undefined {
  const pounds = figure.unit?.kind === 'unit' && figure.unit.symbol === 'lb'
  const boosted = choiceMentions.some(({ meanings }) =>
    meanings.some(
      (m) => m.kind === 'choice' && (m.value === 'turbocharged' || m.value === 'supercharged'),
    ),
  )
  return pounds && boosted ? 'boost' : defaultKey(figure)
}

function isSetAgainst(
  { from, to }: Figure,
  before: Figure | undefined,
  { tokens, scopes, lexicon, figureMentions, input }: Parts,
): boolean {
  // "Not 10 psi, 8", "isn't 7200 after all, it's 6700", "replace the 9.8 compression with 10.2".
  if (before && from - before.to <= REACH && input.negations.denies(before)) {
    const named = coverage(tokens.length, figureMentions)
    const links = tokens
      .slice(before.to, from)
      .every(({ text }, i) => named[before.to + i] || lexicon.words.figures.replaces.has(text))
    if (links) return true
  }
  if (lexicon.words.times.now.has(tokens[to]?.text ?? '')) return true
  for (let at = from - 1; at >= 0 && at >= from - REACH; at -= 1) {
    if (tokens[at]?.text === 'so' && (tokens[at - 1]?.text === ',' || at === from - 1)) return true
    const marker = scopes.markers.find((mention) => mention.from <= at && at < mention.to)
    if (marker?.meanings.some((m) => m === 'present' || m === 'ownPerson')) return true
    if (lexicon.words.persons.measures.has(tokens[at]?.text ?? '')) return true
    if (!lexicon.words.figures.setAgainst.has(tokens[at]?.text ?? '')) return false
  }
  return false
}
