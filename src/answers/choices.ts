import type { FactKey } from '../../shared/fact-keys.ts'
import { fact } from '../../shared/fact-keys.ts'
import type { Doubt, Findings, Reading } from './findings.ts'
import type { ChoiceMeaning, Lexicon } from './lexicon.ts'
import type { Mention } from './mentions.ts'
import type { Negations } from './negation.ts'
import { longestAt } from './phrases.ts'
import type { Scopes } from './scopes.ts'
import type { Token } from './tokens.ts'

export interface ChoiceInput {
  readonly tokens: readonly Token[]
  readonly lexicon: Lexicon
  readonly scopes: Scopes
  readonly negations: Negations
  /** Take hypotheticals as said: the message asks what would be. */
  readonly whatIf: boolean
  /** Parts that a price was given for: they are not yet on the engine. */
  readonly priced: (mention: Mention<ChoiceMeaning>) => boolean
  /** Words inside the name of a measure: the bolts of "bolt span". */
  readonly measured: (mention: Mention<ChoiceMeaning>) => boolean
}

/** Read every choice of a message: phrases that settle one, and parts with what is said of them. */
export function readChoices(
  mentions: readonly Mention<ChoiceMeaning>[],
  input: ChoiceInput,
  into: Findings,
): void {
  const readings: Reading[] = []
  mentions.forEach((mention, i) => {
    for (const meaning of mention.meanings) {
      if (meaning.kind === 'choice') readings.push(...choiceReading(mention, meaning, input))
      const noun = nounOf(meaning, mention, input)
      if (noun) readings.push(...nounReadings(mentions, i, noun, input))
    }
  })
  mentions.forEach((mention, i) => {
    readings.push(...aloneReadings(mentions, i, mention, input))
  })
  const standing = readings.filter((reading) => stands(reading, input))
  into.readings.push(...settleRelated(standing, input.scopes))
  for (const mention of mentions) into.doubts.push(...ambiguities(mention, input, into))
}

/** A part, or the part that a choice names: the block of "inline six", the caps of "two bolt caps". */
function nounOf(
  meaning: ChoiceMeaning,
  { from, to }: Mention<ChoiceMeaning>,
  { tokens, lexicon }: ChoiceInput,
): string | undefined {
  if (meaning.kind === 'noun') return meaning.noun
  if (meaning.kind !== 'choice') return undefined
  if (meaning.fact === 'layout') return 'block'
  if (meaning.fact !== 'capFastening' && meaning.fact !== 'skirt') return undefined
  for (let at = from + 1; at < to; at += 1) {
    const tail = longestAt(lexicon.choices, tokens, at)
    const noun = tail?.to === to ? tail.meanings.find(({ kind }) => kind === 'noun') : undefined
    if (noun?.kind === 'noun' && (noun.noun === 'caps' || noun.noun === 'block')) return noun.noun
  }
  return undefined
}

function choiceReading(
  mention: Mention<ChoiceMeaning>,
  meaning: { fact: FactKey; value: string },
  input: ChoiceInput,
): Reading[] {
  const { from, to } = mention
  if (input.negations.denies(mention)) {
    const denied = longestAt(input.lexicon.denied, input.tokens, from)
    return (denied?.meanings ?? []).map(({ fact: key, value }) => ({
      key,
      answer: value,
      from,
      to,
      strength: 3,
    }))
  }
  if (isHardware(meaning.fact) && input.priced(mention)) return []
  const reading: Reading = { key: meaning.fact, answer: meaning.value, from, to, strength: 3 }
  return [reading, ...kindWithin(mention, meaning.fact, input)]
}

/** "Grade 8 bolts" says bolts too. */
function kindWithin(
  { from, to }: Mention<ChoiceMeaning>,
  key: FactKey,
  { tokens, lexicon }: ChoiceInput,
): Reading[] {
  if (!['fastenerGrade', 'fastenerLubricant', 'tightening'].includes(key)) return []
  for (let at = from; at < to; at += 1) {
    for (const meaning of longestAt(lexicon.choices, tokens.slice(0, to), at)?.meanings ?? []) {
      if (meaning.kind !== 'noun' || (meaning.noun !== 'bolts' && meaning.noun !== 'studs'))
        continue
      const answer = meaning.noun === 'bolts' ? 'bolt' : 'stud'
      return [{ key: 'fastenerKind', answer, from, to, strength: 2 }]
    }
  }
  return []
}

/** A part by itself ("main studs") and with its attributes ("factory iron caps", "caps are steel"). */
function nounReadings(
  mentions: readonly Mention<ChoiceMeaning>[],
  i: number,
  noun: string,
  input: ChoiceInput,
): Reading[] {
  const mention = mentions[i] as Mention<ChoiceMeaning>
  const readings: Reading[] = []
  if (noun === 'bolts' || noun === 'studs') {
    const kind = noun === 'bolts' ? 'bolt' : 'stud'
    if (!input.negations.denies(mention) && !input.priced(mention) && !input.measured(mention)) {
      readings.push({
        key: 'fastenerKind',
        answer: kind,
        from: mention.from,
        to: mention.to,
        strength: 2,
      })
    }
  }
  if (noun === 'other') return readings
  for (const other of attributesOf(mentions, i, input)) {
    for (const meaning of other.meanings) {
      if (meaning.kind !== 'attribute' || input.negations.denies(other) || input.priced(mention))
        continue
      const from = Math.min(other.from, mention.from)
      const to = Math.max(other.to, mention.to)
      for (const [key, value] of Object.entries(meaning.of[noun] ?? {})) {
        readings.push({ key: key as FactKey, answer: value, from, to, strength: 3 })
      }
    }
  }
  return readings
}

/**
 * "V8, aluminium, 11:1", "splayed caps, billet steel": a material in a clause of its
 * own is the caps' if caps were just spoken of, else the block's; after any other part
 * it is nobody's.
 */
function aloneReadings(
  mentions: readonly Mention<ChoiceMeaning>[],
  i: number,
  mention: Mention<ChoiceMeaning>,
  input: ChoiceInput,
): Reading[] {
  const { tokens, scopes, lexicon } = input
  if (!isAttribute(mention) || input.negations.denies(mention)) return []
  const { from, to } = mention
  const own = (at: number): boolean => scopes.clause[at] === scopes.clause[from]
  for (let at = from - 1; at >= 0 && own(at); at -= 1) {
    if (tokens[at]?.text !== ',' && !lexicon.fillers.has(tokens[at]?.text ?? '')) return []
  }
  if (to < tokens.length && own(to) && tokens[to]?.kind !== 'mark') return []
  if (from === 0) return []
  const before = mentions[i - 1]
  const nouns = (before?.meanings ?? []).map((meaning) =>
    nounOf(meaning, before as typeof mention, input),
  )
  const noun = nouns.find((found) => found !== undefined) ?? 'block'
  const near = before && scopes.clause[before.from] === (scopes.clause[from] ?? 0) - 1
  if (near && isNoun(before) && noun !== 'caps' && noun !== 'block') return []
  const target = near && noun === 'caps' ? 'caps' : 'block'
  if (speaksOfOther(from, input)) return []
  return mention.meanings.flatMap((meaning) =>
    meaning.kind === 'attribute'
      ? Object.entries(meaning.of[target] ?? {}).map(([key, value]) => ({
          key: key as FactKey,
          answer: value,
          from,
          to,
          strength: 2 as const,
        }))
      : [],
  )
}

/** Whether the clause before names another part: "crank, forged steel". */
function speaksOfOther(from: number, { tokens, scopes, lexicon }: ChoiceInput): boolean {
  const clause = (scopes.clause[from] ?? 0) - 1
  for (let at = from - 1; at >= 0 && (scopes.clause[at] ?? 0) >= clause; at -= 1) {
    const found = longestAt(lexicon.choices, tokens, at)
    if (
      found?.meanings.some((m) => m.kind === 'shadow' || (m.kind === 'noun' && m.noun === 'other'))
    )
      return true
  }
  return false
}

/** The attributes before a part with no other part between, else those after "are", "is", ":". */
function attributesOf(
  mentions: readonly Mention<ChoiceMeaning>[],
  i: number,
  input: ChoiceInput,
): Mention<ChoiceMeaning>[] {
  const noun = mentions[i] as Mention<ChoiceMeaning>
  const found: Mention<ChoiceMeaning>[] = []
  let edge = noun.from
  for (let j = i - 1; j >= 0; j -= 1) {
    const other = mentions[j] as Mention<ChoiceMeaning>
    if (!links(other.to, edge, input) || isNoun(other)) break
    if (isAttribute(other) && !saidOfEarlier(mentions, j, input)) found.push(other)
    edge = other.from
  }
  edge = noun.to
  let listed = false
  for (let j = i + 1; j < mentions.length; j += 1) {
    const other = mentions[j] as Mention<ChoiceMeaning>
    if (!linksBack(edge, other.from, input, listed)) break
    if (edge === noun.to) listed = verbBetween(noun.to, other.from, input)
    if (isNoun(other)) break
    if (isAttribute(other)) {
      if (ownsForward(mentions, j, input)) break
      found.push(other)
    }
    edge = other.to
  }
  return found
}

/** "block is iron caps are steel": "iron" after "block is" is the block's. */
function saidOfEarlier(
  mentions: readonly Mention<ChoiceMeaning>[],
  j: number,
  input: ChoiceInput,
): boolean {
  const before = mentions[j - 1]
  const attribute = mentions[j] as Mention<ChoiceMeaning>
  if (!before || !isNoun(before)) return false
  if (input.scopes.clause[before.from] !== input.scopes.clause[attribute.from]) return false
  return verbBetween(before.to, attribute.from, input)
}

/** "caps, iron block": "iron" belongs to the part that follows it directly. */
function ownsForward(
  mentions: readonly Mention<ChoiceMeaning>[],
  j: number,
  input: ChoiceInput,
): boolean {
  const attribute = mentions[j] as Mention<ChoiceMeaning>
  const before = mentions[j - 1]
  if (before && isNoun(before) && verbBetween(before.to, attribute.from, input)) return false
  let edge = attribute.to
  for (const next of mentions.slice(j + 1)) {
    if (!links(edge, next.from, input)) return false
    if (isNoun(next)) return true
    edge = next.to
  }
  return false
}

const VERBS = new Set(['is', 'are', 'was', 'were', ':', '=', 'made', 'of'])

function verbBetween(from: number, to: number, { tokens }: ChoiceInput): boolean {
  for (let at = from; at < to; at += 1) if (VERBS.has(tokens[at]?.text ?? '')) return true
  return false
}

/** Whether only small words stand between, and no comma. */
function links(from: number, to: number, { tokens, lexicon }: ChoiceInput): boolean {
  if (to - from > 4) return false
  for (let at = from; at < to; at += 1) {
    if (!lexicon.between.has(tokens[at]?.text ?? '') || VERBS.has(tokens[at]?.text ?? ''))
      return false
    if (tokens[at]?.text === 'and' || tokens[at]?.text === 'with') return false
  }
  return tokens[to]?.gap !== 'dash'
}

/** What follows a part; after "caps are …" or "caps: …" a list with commas too. */
function linksBack(
  from: number,
  to: number,
  { tokens, lexicon }: ChoiceInput,
  listed: boolean,
): boolean {
  if (to - from > 5) return false
  for (let at = from; at < to; at += 1) {
    if (listed && tokens[at]?.text === ',') continue
    if (!lexicon.between.has(tokens[at]?.text ?? '')) return false
    if (tokens[at]?.text === 'with') return false
  }
  return true
}

function isNoun({ meanings }: Mention<ChoiceMeaning>): boolean {
  return meanings.some(({ kind }) => kind === 'noun' || kind === 'shadow')
}

function isAttribute({ meanings }: Mention<ChoiceMeaning>): boolean {
  return meanings.some(({ kind }) => kind === 'attribute')
}

/** What only a machinist can say is said of others: "he says the webs are thick enough". */
const SHOP_SAYS = new Set<FactKey>(['websAllowFourBolt', 'shopLineBores'])
/** Facts that a wish does not change: what is on the block today. */
const HARDWARE = new Set(['caps', 'fasteners'])

function stands(reading: Reading, { scopes, whatIf }: ChoiceInput): boolean {
  const outside = scopes.outside[reading.to - 1] ?? scopes.outside[reading.from]
  if (outside === 'other') return SHOP_SAYS.has(reading.key)
  if (outside === 'past') return false
  if (whatIf) return true
  if (outside === 'hypothetical') return false
  return !(isHardware(reading.key) && scopes.planned[reading.from])
}

function isHardware(key: FactKey): boolean {
  return HARDWARE.has(fact(key).topic) || key === 'capFastening'
}

/** Readings that go together: a turbo with a shot is turbocharged; "four bolt" beside "splayed" is splayed. */
function settleRelated(readings: readonly Reading[], { clause }: Scopes): Reading[] {
  const has = (key: FactKey, value: string): boolean =>
    readings.some((reading) => reading.key === key && reading.answer === value)
  const webs = new Set(
    readings.filter(({ key }) => key === 'websAllowFourBolt').map(({ from }) => clause[from]),
  )
  return readings.filter(({ key, answer, from }) => {
    // "Webs are too thin for four bolts" counts no bolts.
    const counted = key === 'capFastening' || key === 'fastenerKind'
    if (counted && webs.has(clause[from])) return false
    if (key === 'induction' && answer === 'nitrous') {
      return !has('induction', 'turbocharged') && !has('induction', 'supercharged')
    }
    if (key === 'capFastening' && (answer === 'four-bolt' || answer === 'two-bolt')) {
      const more = [
        'cross-bolted',
        'girdle',
        ...(answer === 'four-bolt' ? ['four-bolt-splayed'] : []),
      ]
      return !more.some((value) => has('capFastening', value))
    }
    if (key === 'layout' && answer === 'v8-cross-plane') return !has('layout', 'v8-flat-plane')
    if (key === 'use' && (answer === 'street' || answer === 'drag')) {
      return !has('use', 'street-strip')
    }
    return true
  })
}

function ambiguities(
  mention: Mention<ChoiceMeaning>,
  input: ChoiceInput,
  { readings }: Findings,
): Doubt[] {
  const doubts: Doubt[] = []
  for (const meaning of mention.meanings) {
    if (meaning.kind !== 'ambiguous') continue
    if (meaning.unless && readings.some(({ key }) => key === meaning.unless)) continue
    if (input.scopes.outside[mention.from] || input.negations.denies(mention)) continue
    doubts.push({ from: mention.from, to: mention.to, why: meaning.why })
  }
  return doubts
}
