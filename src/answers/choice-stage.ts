import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { askedChoice, isReported } from './answer-asked.ts'
import { isNoToOther } from './bare-no.ts'
import { SHOP_SAYS } from './choice-relations.ts'
import { readChoices } from './choices.ts'
import type { Findings } from './findings.ts'
import { kindNamed } from './kind-named.ts'
import type { ChoiceMeaning } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import type { Parts } from './message-parts.ts'
import { asksAt } from './sentences.ts'

/** Read every choice of a message, the one that was asked among them. */
export function readAllChoices(parts: Parts, asking: FactKey | undefined, into: Findings): void {
  const { tokens, lexicon, scopes, choiceMentions, input } = parts
  readChoices(
    choiceMentions,
    {
      tokens,
      lexicon,
      scopes,
      negations: input.negations,
      asking,
      whatIf: input.whatIf,
      priced: (mention) => isPriced(mention, parts),
      asksAbout: (at) => isAsked(at, parts),
      wrenched: (at) => isWrenched(at, parts),
      measured: (mention) => isMeasured(mention, parts),
    },
    into,
  )
  if (asking && !into.readings.some(({ key }) => key === asking)) readAsked(parts, asking, into)
  const answer = into.readings.find(({ key }) => key === asking)
  if (answer && !into.readings.some(({ key }) => key === 'fastenerKind'))
    into.readings.push(...kindNamed(answer, asking, tokens, lexicon))
  doubtWithdrawn(parts, into)
}

/** "Not turbocharged", when it was said before: taken back, with nothing in its place. */
function doubtWithdrawn({ choiceMentions, input }: Parts, { readings, doubts }: Findings): void {
  for (const mention of choiceMentions) {
    if (!input.negations.denies(mention)) continue
    for (const meaning of mention.meanings) {
      if (meaning.kind !== 'choice' || input.answers[meaning.fact] !== meaning.value) continue
      if (readings.some(({ key }) => key === meaning.fact)) continue
      const why = `said before, and now denied: say what ${fact(meaning.fact).short} is instead`
      doubts.push({ from: mention.from, to: mention.to, why })
    }
  }
}

/** Whether a place stands in a sentence that asks something. */
function isAsked(at: number, { tokens, scopes: { sentence } }: Parts): boolean {
  let from = at
  while (from > 0 && sentence[from - 1] === sentence[at]) from -= 1
  let end = at
  while (end + 1 < tokens.length && sentence[end + 1] === sentence[at]) end += 1
  return tokens[end]?.text === '?' || asksAt(from, tokens, sentence)
}

function readAsked(parts: Parts, asking: FactKey, into: Findings): void {
  const { tokens, lexicon, scopes, input, choiceMentions } = parts
  const free = (stretch: { from: number; to: number }): boolean =>
    !input.negations.denies(stretch) &&
    !isUnknown(stretch, scopes) &&
    !isRefused(stretch, tokens, scopes) &&
    !isNoToOther(stretch, asking, parts, into.readings) &&
    !(isOfOtherPart(stretch, choiceMentions, scopes) && !isOnHead(stretch, asking, parts)) &&
    (!scopes.outside[stretch.from] ||
      // "They came with it", to the question where they are from.
      (scopes.outside[stretch.from] === 'past' && asking === 'capOrigin') ||
      (scopes.outside[stretch.from] === 'other' &&
        (SHOP_SAYS.has(asking) || isReported(tokens, lexicon)))) &&
    !into.readings.some(({ from, to }) => from < stretch.to && stretch.from < to)
  const asked = askedChoice(asking, tokens, lexicon, free)
  if (asked.reading) {
    const { from, to } = asked.reading
    into.readings.push(asked.reading)
    const kept = into.doubts.filter((doubt) => doubt.to <= from || doubt.from >= to)
    into.doubts.splice(0, into.doubts.length, ...kept)
  }
  into.doubts.push(...asked.doubts)
}

/** "Heads are alloy", to the question what the block is. */
function isOfOtherPart(
  { from }: { from: number },
  mentions: Parts['choiceMentions'],
  { clause }: Parts['scopes'],
): boolean {
  const last = mentions.filter((one) => one.to <= from && clause[one.from] === clause[from]).at(-1)
  return last?.meanings.some((m) => m.kind === 'noun' && m.noun === 'other') ?? false
}

/** "Head says 10.9": the head of the bolt, to the question of its grade. */
function isOnHead(
  { from }: { from: number },
  asking: FactKey,
  { tokens, lexicon }: Parts,
): boolean {
  const said = tokens.slice(Math.max(0, from - 4), from).map(({ text }) => text)
  return asking === 'fastenerGrade' && said.some((word) => lexicon.words.parts.heads.has(word))
}

/** The hammer of "no hammer", and by hand where "by hand it doesn't go". */
function isRefused(
  { from, to }: { from: number; to: number },
  tokens: Parts['tokens'],
  { markers }: Parts['scopes'],
): boolean {
  return markers.some(
    (marker) =>
      (marker.meanings.includes('negation') &&
        marker.to <= from &&
        tokens.slice(marker.to, from).every(({ text }) => BEFORE_REFUSED.has(text))) ||
      (marker.meanings.includes('deniedAfter') && marker.from >= to && marker.from - to <= 1),
  )
}

/** Between a denial and what it denies in an answer. */
const BEFORE_REFUSED = new Set('a an the any need needs needed necessary of for'.split(' '))

/** The no of "no idea". */
function isUnknown(
  { from, to }: { from: number; to: number },
  { markers }: Parts['scopes'],
): boolean {
  return markers.some(
    (marker) => marker.meanings.includes('dontKnow') && marker.from < to && from < marker.to,
  )
}

/** A part with a price on it is for sale, not on the engine: "steel caps run 285". */
function isPriced({ from, to }: Mention<ChoiceMeaning>, parts: Parts): boolean {
  const { pairs, input, scopes, figures, tokens, lexicon } = parts
  // "Steel caps cost too much for me".
  const dear = (at: number): boolean => lexicon.words.prices.dear.has(tokens[at]?.text ?? '')
  if ([to, to + 1, to + 2].some((at) => scopes.clause[at] === scopes.clause[from] && dear(at)))
    return true
  const named = new Set(pairs.filter(({ use }) => use.kind === 'fact').map(({ figure }) => figure))
  const loosePrice = figures.some(
    (figure) =>
      figure.unit?.kind === 'money' &&
      !named.has(figure) &&
      scopes.clause[figure.from] === scopes.clause[from],
  )
  if (loosePrice) return true
  return pairs.some(({ use, figure, mention }) => {
    if (use.kind !== 'fact' || fact(use.key).kind !== 'money') return false
    if (input.negations.denies(figure)) return false
    if (mention.from < to && from < mention.to) return true
    const before = to <= mention.from && mention.from - to <= 2
    const part = use.key === 'capsPrice' || use.key === 'studsPrice'
    const shortly = figure.from >= to && figure.from - to <= 7
    return part && (before || shortly) && scopes.clause[from] === scopes.clause[mention.from]
  })
}

/** "85 Nm and oil", "70 ft-lb, dry": what a torque was given with. */
function isWrenched(at: number, { figures, tokens }: Parts): boolean {
  return figures.some(
    ({ unit, to }) =>
      unit?.kind === 'unit' &&
      (unit.symbol === 'lb ft' || unit.symbol === 'N m') &&
      to <= at &&
      at - to <= 2 &&
      tokens.slice(to, at).every(({ text }) => WITH.has(text)),
  )
}

const WITH = new Set([',', 'and', 'in', 'with', 'on', '/', 'w'])

/** The bolts of "distance between the main bolts" are named only to measure by. */
function isMeasured(
  { from, to }: Mention<ChoiceMeaning>,
  { figureMentions, pairs, tokens }: Parts,
): boolean {
  // "Cap bolts sit 3.9 inches apart", but not "bolts are 7/16-14, 3.4 between them".
  const span = pairs.some(
    ({ use, figure }) =>
      use.kind === 'fact' &&
      use.key === 'capBoltSpan' &&
      figure.from >= to &&
      figure.from - to <= 4 &&
      !tokens.slice(to, figure.from).some(({ kind }) => kind === 'thread'),
  )
  if (span) return true
  return figureMentions.some(
    (mention) =>
      mention.from < to &&
      from < mention.to &&
      mention.meanings.some((meaning) => meaning.kind === 'cue' && meaning.fact === 'capBoltSpan'),
  )
}
