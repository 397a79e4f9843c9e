import { type FactKey, fact } from '../../shared/fact-keys.ts'
import type { Reading } from './findings.ts'
import type { Parts } from './message-parts.ts'
import type { Token } from './tokens.ts'

interface Stretch {
  readonly from: number
  readonly to: number
}

/** Choices of a fact from which on a no to one of them leaves the rest open. */
const MANY = 4
/** Letters that words of one stem share. */
const STEM = 4

/**
 * A bare no that is none to the asked question: it leads into a correction ("no wait, 3.75",
 * "e85, no, pump gas"), or is said of something else that stands right beside it
 * ("nitrous? no", "no girdle").
 *
 * @param asking - the fact that the last question asked for
 * @param read - what else the message says
 */
export function isNoToOther(
  stretch: Stretch,
  asking: FactKey,
  parts: Parts,
  read: readonly Reading[],
): boolean {
  const { tokens, lexicon } = parts
  const { from, to } = stretch
  if (to !== from + 1 || !lexicon.words.asking.no.has(tokens[from]?.text ?? '')) return false
  return corrects(stretch, parts, read) || isOfOther(stretch, asking, parts)
}

function corrects(
  { from, to }: Stretch,
  { tokens, scopes, choiceMentions, figures }: Parts,
  read: readonly Reading[],
): boolean {
  const next = isMark(tokens[to]) ? to + 1 : to
  // "No, sorry" by itself still answers.
  const leads = scopes.markers.some(
    (marker) =>
      marker.meanings.includes('correction') &&
      marker.from <= next &&
      marker.to > to &&
      marker.from >= from &&
      [...read, ...figures].some((one) => one.from >= marker.to),
  )
  const told = read.some((one) => one.to <= from)
  return leads || (told && [...choiceMentions, ...figures].some((one) => one.from === next))
}

function isOfOther({ from, to }: Stretch, asking: FactKey, parts: Parts): boolean {
  const { tokens, choiceMentions, figureMentions, lexicon } = parts
  const marked = MARKS.has(tokens[from - 1]?.text ?? '')
  const end = marked ? from - 1 : from
  const named = [...choiceMentions, ...figureMentions]
  const last = to === tokens.length || isMark(tokens[to])
  const before = marked || last ? named.find((one) => one.to === end) : undefined
  const after = choiceMentions.find((one) => one.from === to)
  return [before, after].some(
    (one) =>
      one !== undefined && !isOwn(one, asking, parts) && !lexicon.leads.has(text(one, tokens)),
  )
}

const MARKS = new Set(['?', ':', '='])

/** Whether a phrase speaks of what was asked: one of its choices, or a word of its name. */
function isOwn(
  stretch: Parts['choiceMentions' | 'figureMentions'][number],
  asking: FactKey,
  { tokens }: Parts,
): boolean {
  const entry = fact(asking)
  const choices = entry.kind === 'choice' ? Object.keys(entry.choices) : []
  for (const meaning of stretch.meanings) {
    if (meaning.kind === 'choice' && meaning.fact === asking) return choices.length < MANY
    if (meaning.kind === 'cue' && meaning.fact === 'boost' && asking === 'induction') return true
  }
  const name = `${entry.label} ${entry.short}`.toLowerCase()
  // "Line boring: no", to whether the shop line bores.
  return text(stretch, tokens)
    .split(' ')
    .some((word) => word.length >= STEM && name.includes(word.slice(0, STEM)))
}

function text({ from, to }: Stretch, tokens: readonly Token[]): string {
  return tokens
    .slice(from, to)
    .map((token) => token.text)
    .join(' ')
}

function isMark(token: Token | undefined): boolean {
  return token?.kind === 'mark'
}
