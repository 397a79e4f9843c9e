import { UNKNOWN } from '../../shared/answers.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import type { Reading } from './findings.ts'
import { coverage } from './mentions.ts'
import type { Parts } from './message-parts.ts'
import { longestAt } from './phrases.ts'
import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'
import { factsIn } from './topics.ts'

/**
 * What a message says it does not know: the fact named beside "no idea", else the
 * fact that was asked, if nothing else in the message answers it.
 */
export function unknownsIn(
  parts: Parts,
  known: readonly Reading[],
  asking: FactKey | undefined,
): Reading[] {
  const { tokens, scopes, lexicon, figures } = parts
  const unknowns: Reading[] = []
  // The psi of "maybe 20 psi, idk" names nothing that is not known.
  const inFigure = coverage(tokens.length, figures)
  const named = (start: number, end: number) =>
    factsIn(tokens, start, end, lexicon).filter(({ from }) => !inFigure[from])
  const open = (key: FactKey): boolean =>
    !known.some((reading) => reading.key === key) &&
    !unknowns.some((reading) => reading.key === key)
  for (const marker of scopes.markers) {
    if (!marker.meanings.includes('dontKnow') || scopes.outside[marker.from] === 'other') continue
    const [start, end] = clauseAround(marker, scopes, tokens)
    const after = named(marker.to, end)
    const before =
      after.length > 0
        ? []
        : named(askedBefore(start, tokens), marker.from)
            .slice(-1)
            .filter(({ to }) => marker.from - to <= NEAR)
    for (const { key, from, to } of [...after, ...before]) {
      if (!open(key) || isOfEngine(key, from, to, end, parts)) continue
      const [first, last] = [Math.min(marker.from, from), Math.max(marker.to, to)]
      unknowns.push({ key, answer: UNKNOWN, from: first, to: last, strength: 3 })
    }
    const unnamed = after.length + before.length === 0
    if (unnamed && asking && open(asking) && hasNoFact(marker, known, scopes)) {
      const { from, to } = marker
      unknowns.push({ key: asking, answer: UNKNOWN, from, to, strength: 3 })
    }
  }
  const alone = unknowns.length === 0 && known.length === 0
  const others = asking && open(asking) && alone ? sharedShrug(parts) : undefined
  if (asking && others) unknowns.push({ key: asking, answer: UNKNOWN, ...others, strength: 3 })
  const deferred =
    asking && open(asking) && known.length === 0 ? deferredAt(parts, asking) : undefined
  if (asking && deferred) unknowns.push({ key: asking, answer: UNKNOWN, ...deferred, strength: 3 })
  return unknowns
}

/** "No idea what the torque will be": as likely the engine's own, which is no fact. */
function isOfEngine(
  key: FactKey,
  from: number,
  to: number,
  end: number,
  { tokens, lexicon }: Parts,
): boolean {
  if (key !== 'fastenerTorque' || to > from + 1) return false
  const { bolts, studs } = lexicon.words.fasteners
  if (tokens.some(({ text }) => bolts.has(text) || studs.has(text))) return false
  return tokens.slice(to, end).some(({ text }) => MAKES.has(text))
}

const MAKES = new Set('will make makes making puts'.split(' '))

/** "He has no idea, it came without papers": another's shrug that names nothing is an answer too. */
function sharedShrug({ tokens, scopes, lexicon }: Parts): { from: number; to: number } | undefined {
  if (tokens.length > LONGEST_DEFERRAL || factsIn(tokens, 0, tokens.length, lexicon).length > 0)
    return undefined
  const marker = scopes.markers.find(({ meanings }) => meanings.includes('dontKnow'))
  return marker && { from: marker.from, to: marker.to }
}

/** "The boss would know that, I don't", "ask my engine builder": left to others. */
export function deferredAt(
  parts: Parts,
  asking: FactKey,
): { from: number; to: number } | undefined {
  const { tokens, lexicon } = parts
  const { defers, othersKnow, notMe } = lexicon.questions
  const end = tokens.at(-1)?.kind === 'mark' ? tokens.length - 1 : tokens.length
  if (end > LONGEST_DEFERRAL) return undefined
  if (isNotYet(end, asking, parts)) return { from: 0, to: end }
  for (let from = 0; from < end; from += 1) {
    if (longestAt(defers, tokens, from)) return { from, to: end }
    const knows = longestAt(othersKnow, tokens, from)
    if (!knows) continue
    for (let at = knows.to; at < end; at += 1) {
      if (longestAt(notMe, tokens, at)?.to === end) return { from, to: end }
    }
  }
  return undefined
}

/** Choices that are found out by looking or measuring, so that "not yet" is no answer to them. */
const LOOKED_AT = new Set<FactKey>([
  'blockMaterial',
  'capFastening',
  'capMaterial',
  'skirt',
  'websAllowFourBolt',
  'fastenerGrade',
])

/** "Haven't pulled the pan yet", "not been dynoed": what was not done to find out. */
function isNotYet(
  end: number,
  asking: FactKey,
  { tokens, lexicon, choiceMentions, figures, requests }: Parts,
): boolean {
  const { kind } = fact(asking)
  if (kind === 'choice' && !LOOKED_AT.has(asking)) return false
  if (end < 2 || choiceMentions.some(isSaid) || figures.length > 0 || requests.length > 0)
    return false
  let from = 0
  const small = (word: string): boolean =>
    word !== 'not' && (lexicon.leads.has(word) || lexicon.fillers.has(word))
  while (small(tokens[from]?.text ?? '')) from += 1
  const [first, next] = [tokens[from]?.text ?? '', tokens[from + 1]?.text ?? '']
  if (lexicon.words.asking.notYet.has(first)) return next !== ''
  return first === 'not' && (next === 'been' || next === 'yet' || /ed$/.test(next))
}

/** A part that is only named says nothing of what was asked. */
function isSaid({ meanings }: Parts['choiceMentions'][number]): boolean {
  return meanings.some(({ kind }) => kind === 'choice' || kind === 'attribute')
}

/** Longest message, in words, that only leaves an answer to others. */
const LONGEST_DEFERRAL = 15

/** Whether the first thing that a message says is that something is not known. */
export function opensOnShrug({ tokens, scopes, lexicon }: Parts): boolean {
  let from = 0
  while (lexicon.leads.has(tokens[from]?.text ?? '')) from += 1
  return scopes.markers.some((one) => one.from <= from && one.meanings.includes('dontKnow'))
}

/** Furthest that a name stands before "no idea", in words. */
const NEAR = 3

/** "Compression? No clue": where a question of a few words before starts. */
function askedBefore(start: number, tokens: readonly Token[]): number {
  if (tokens[start - 1]?.text !== '?') return start
  let from = start - 1
  while (from > 0 && start - from < 5 && !'.!?,'.includes(tokens[from - 1]?.text ?? '')) from -= 1
  return from
}

/** "Maybe 12 psi, not sure" is a figure with a shrug, no "I don't know". */
function hasNoFact(marker: { from: number }, known: readonly Reading[], scopes: Scopes): boolean {
  return !known.some(({ from }) => scopes.clause[from] === scopes.clause[marker.from])
}

function clauseAround(
  { from, to }: { from: number; to: number },
  { clause }: Scopes,
  tokens: readonly Token[],
): [number, number] {
  let start = from
  while (start > 0 && clause[start - 1] === clause[from] && tokens[start - 1]?.text !== ',')
    start -= 1
  let end = to
  while (end < tokens.length && clause[end] === clause[to - 1] && tokens[end]?.text !== ',')
    end += 1
  return [start, end]
}
