import type { FactKey } from '../../shared/fact-keys.ts'
import { attributesOf, nounOf, partBefore } from './attributes.ts'
import type { ChoiceInput } from './choice-input.ts'
import { isHardware, isNobodys, isTakenBack, settleRelated, stands } from './choice-relations.ts'
import { readClues } from './clues.ts'
import type { Doubt, Findings, Reading } from './findings.ts'
import type { ChoiceMeaning } from './lexicon.ts'
import { aloneReadings } from './lone-attributes.ts'
import type { Mention } from './mentions.ts'
import { isOneOfTwo } from './one-of-two.ts'
import { longestAt } from './phrases.ts'
import { placeOf } from './question-words.ts'

/** Read every choice of a message: phrases that settle one, and parts with what is said of them. */
export function readChoices(
  mentions: readonly Mention<ChoiceMeaning>[],
  input: ChoiceInput,
  into: Findings,
): void {
  const readings: Reading[] = []
  mentions.forEach((mention, i) => {
    if (isOneOfTwo(mentions, i, input)) return
    for (const meaning of mention.meanings) {
      if (meaning.kind === 'choice') readings.push(...choiceReading(mention, meaning, input))
      const noun = nounOf(meaning, mention, input)
      if (noun) readings.push(...nounReadings(mentions, i, noun, input))
    }
  })
  readings.push(...unboosted(mentions, readings, input))
  mentions.forEach((mention, i) => {
    readings.push(...aloneReadings(mentions, i, mention, input))
  })
  readings.push(...readClues(input, input.asking))
  const standing = readings.filter(
    (reading) =>
      stands(reading, input) &&
      !isLeft(reading, readings, input) &&
      !isDeniedBeside(reading, mentions, input),
  )
  const left = standing.filter((reading) => isTakenBack(reading, standing, input))
  const kept = standing.filter((reading) => !left.includes(reading))
  into.readings.push(...left, ...settleRelated(kept, input.scopes))
  for (const reading of readings) {
    if (!standing.includes(reading)) into.doubts.push(unstanding(reading, input))
  }
  for (const mention of mentions) into.doubts.push(...ambiguities(mention, input, into))
}

/** "Switch from street to drag", "swap e85 for race gas": left for another choice of the same fact. */
function isLeft(
  { key, from, to }: Reading,
  readings: readonly Reading[],
  { tokens, lexicon }: ChoiceInput,
): boolean {
  const same = (fits: (other: Reading) => boolean): boolean =>
    readings.some((other) => other.key === key && fits(other))
  const before = tokens[from - 1]?.text
  if (!EXCHANGED_FOR.has(tokens[to]?.text ?? ''))
    return before === 'from' && same((other) => other.to === from - 1)
  const exchanged =
    before === 'from'
      ? tokens[to]?.text === 'to'
      : placeOf(lexicon.questions.exchanges, tokens, Math.max(0, from - 3), from) >= 0
  return exchanged && same((other) => other.from > to && other.from <= to + 3)
}

const EXCHANGED_FOR = new Set(['to', 'for', 'with'])

/** "Ethanol, 100%. It is not E85": the same choice by another name, denied in so many words. */
function isDeniedBeside(
  { key, answer, from }: Reading,
  mentions: readonly Mention<ChoiceMeaning>[],
  { negations }: ChoiceInput,
): boolean {
  return (
    key === 'fuel' &&
    mentions.some(
      (mention) =>
        mention.from > from &&
        negations.denies(mention) &&
        mention.meanings.some((m) => m.kind === 'choice' && m.fact === key && m.value === answer),
    )
  )
}

/** "Not turbo, not supercharged": with both denied it breathes by itself. */
function unboosted(
  mentions: readonly Mention<ChoiceMeaning>[],
  readings: readonly Reading[],
  { negations }: ChoiceInput,
): Reading[] {
  if (readings.some(({ key }) => key === 'induction')) return []
  const denied = (value: string): Mention<ChoiceMeaning> | undefined =>
    mentions.find(
      (mention) =>
        negations.denies(mention) &&
        mention.meanings.some((meaning) => meaning.kind === 'choice' && meaning.value === value),
    )
  const [turbo, blower] = [denied('turbocharged'), denied('supercharged') ?? denied('nitrous')]
  if (!turbo || !blower) return []
  const from = Math.min(turbo.from, blower.from)
  const to = Math.max(turbo.to, blower.to)
  return [{ key: 'induction', answer: 'naturally-aspirated', from, to, strength: 2 }]
}

function unstanding({ from, to }: Reading, { scopes }: ChoiceInput): Doubt {
  const outside = scopes.outside[to - 1] ?? scopes.outside[from]
  if (outside === 'other') return { from, to, why: 'read as about another engine' }
  if (outside === 'past') return { from, to, why: 'read as how it used to be' }
  return { from, to, why: 'read as a wish or a question, not as what is there' }
}

function choiceReading(
  mention: Mention<ChoiceMeaning>,
  meaning: { fact: FactKey; value: string },
  input: ChoiceInput,
): Reading[] {
  const { from, to } = mention
  if (meaning.fact === 'shopLineBores' && meaning.value === 'yes' && isNobodys(from, input)) {
    return [{ key: meaning.fact, answer: 'no', from, to, strength: 3 }]
  }
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
  const { bolts, studs } = lexicon.words.fasteners
  if (!['fastenerGrade', 'fastenerLubricant', 'tightening'].includes(key)) return []
  for (const { text } of tokens.slice(from, to)) {
    const answer = bolts.has(text) ? 'bolt' : studs.has(text) ? 'stud' : undefined
    if (answer) return [{ key: 'fastenerKind', answer, from, to, strength: 2 }]
  }
  return []
}

/** "Cylinder head bolts", "the starter has 3 bolts": another part's. */
function isOfOtherPart(
  mentions: readonly Mention<ChoiceMeaning>[],
  i: number,
  input: ChoiceInput,
): boolean {
  const { tokens, scopes, lexicon } = input
  const [before, mention] = [mentions[i - 1], mentions[i]]
  if (mention && isOfUnknownPart(mention, input)) return true
  if (!before || !mention || scopes.clause[before.from] !== scopes.clause[mention.from])
    return false
  if (!before.meanings.some((m) => m.kind === 'noun' && m.noun === 'other')) return false
  const between = tokens.slice(before.to, mention.from)
  const got = lexicon.words.fasteners.takes.has(between[0]?.text ?? '')
  return (
    got || between.every(({ text, kind }) => kind === 'number' || text === 'has' || text === 'have')
  )
}

/** "Pinion bolts", "skid plate studs": a word that the vocabulary does not know, right before. */
function isOfUnknownPart({ from, to }: Mention<ChoiceMeaning>, input: ChoiceInput): boolean {
  const { tokens, lexicon } = input
  const before = tokens[from - 1]
  const bare = to === from + 1 && tokens[from]?.gap === 'space'
  if (!bare || before?.kind !== 'word' || /\d/.test(before.text)) return false
  if (!lexicon.speller.known.has(before.text)) return true
  const named = longestAt(lexicon.figures, tokens, from - 1)
  return named?.to === from && named.meanings.every(({ kind }) => kind === 'noise')
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
    // "The old bolts were 65".
    const old = input.tokens[mention.from - 1]?.text === 'old'
    const counts = !old && !input.negations.denies(mention) && !isOfOtherPart(mentions, i, input)
    if (counts && !input.priced(mention) && !input.measured(mention)) {
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
  // "This one's cast iron": an engine.
  const engine = noun === 'ones' && input.tokens[mention.from - 1]?.text === 'this'
  const part = engine ? 'block' : noun === 'ones' ? partBefore(mentions, i, input) : noun
  for (const other of attributesOf(mentions, i, input)) {
    for (const meaning of other.meanings) {
      if (meaning.kind !== 'attribute' || input.negations.denies(other) || input.priced(mention))
        continue
      // "Neither cap is steel".
      if (other.from > mention.from && input.negations.denies(mention)) continue
      const from = Math.min(other.from, mention.from)
      const to = Math.max(other.to, mention.to)
      for (const [key, value] of Object.entries(meaning.of[part] ?? {})) {
        readings.push({ key: key as FactKey, answer: value, from, to, strength: 3 })
      }
    }
  }
  return readings
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
