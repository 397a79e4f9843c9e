import type { Answer, Answers } from '../../shared/answers.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { askedChoice, askedFigure, wholeAnswer } from './answer-asked.ts'
import { readBoreByStroke } from './bore-by-stroke.ts'
import { currencyOf } from './candidates.ts'
import { readChoices } from './choices.ts'
import { defaultVocabulary } from './default-vocabulary.ts'
import { unknownsIn } from './dont-know.ts'
import { type Figure, figuresIn } from './figures.ts'
import { type Findings, noFindings, type Reading } from './findings.ts'
import { type Intent, intentOf, type Request, requestsIn } from './intents.ts'
import { type ChoiceMeaning, type Lexicon, lexiconOf } from './lexicon.ts'
import { coverage, type Mention, mentionsIn } from './mentions.ts'
import { negationsOf } from './negation.ts'
import { normaliseText, originalSpan, type PlainText } from './normalise-text.ts'
import { readOverbore } from './overbore.ts'
import { type Pair, pairFigures } from './pairing.ts'
import {
  afterChange,
  type FigureInput,
  readByUnit,
  readPair,
  readSizeBefore,
  setAside,
} from './read-figures.ts'
import { type Scopes, scopesOf } from './scopes.ts'
import { settle } from './settle.ts'
import { mendSpelling } from './spelling.ts'
import { type Token, tokenise } from './tokens.ts'
import { topicOf } from './topics.ts'
import type { Vocabulary } from './vocabulary.ts'

export interface MessageContext {
  /** The fact that the last question asked for. */
  readonly asking?: FactKey
  readonly answers?: Answers
}

/** What a message says; every fact with the words it came from. */
export interface Understanding {
  readonly facts: { readonly [key in FactKey]?: Answer }
  /** Places in the original message, UTF-16. */
  readonly spans: readonly { readonly key: FactKey; readonly start: number; readonly end: number }[]
  readonly intent: Intent
  /** What "why" or "what is" asks about: a fact key, or a term of the glossary. */
  readonly topic?: string
  /** Words that were not used, and why. */
  readonly unclear: readonly { readonly text: string; readonly why: string }[]
}

export type MessageReader = (text: string, context?: MessageContext) => Understanding

/** A reader that knows the given words; make it once and use it for every message. */
export function createReader(vocabulary: Vocabulary): MessageReader {
  const lexicon = lexiconOf(vocabulary)
  return (text, context = {}) => understand(text, context, lexicon)
}

let usual: MessageReader | undefined

/**
 * Understand one message with the rulebook's own words. Deterministic; never
 * throws; time linear in the text, of which at most 2,000 characters are read.
 *
 * @param text - what the person typed, anything at all
 * @param context - the fact being asked and the answers so far
 */
export function readMessage(text: string, context: MessageContext = {}): Understanding {
  usual ??= createReader(defaultVocabulary())
  return usual(text, context)
}

/** A message taken apart, before anything is decided. */
interface Parts {
  readonly plain: PlainText
  readonly tokens: readonly Token[]
  readonly scopes: Scopes
  readonly figures: readonly Figure[]
  readonly choiceMentions: readonly Mention<ChoiceMeaning>[]
  readonly requests: readonly Request[]
  readonly pairs: readonly Pair[]
  readonly input: FigureInput
}

function understand(text: string, context: MessageContext, lexicon: Lexicon): Understanding {
  const plain = normaliseText(text)
  const tokens = mendSpelling(tokenise(plain.text), lexicon.speller)
  const whole = context.asking && wholeAnswer(context.asking, tokens, lexicon)
  if (whole) return report(text, plain, tokens, [whole], noFindings(), { intent: 'tell' })
  const parts = takeApart(plain, tokens, context, lexicon)
  const findings = noFindings()
  readAllFigures(parts, context, findings)
  readAllChoices(parts, context, lexicon, findings)
  readThreads(parts, findings)
  return conclude(text, parts, context, lexicon, findings)
}

function takeApart(
  plain: PlainText,
  tokens: readonly Token[],
  { answers = {} }: MessageContext,
  lexicon: Lexicon,
): Parts {
  const choiceMentions = mentionsIn(lexicon.choices, tokens)
  const figureMentions = mentionsIn(lexicon.figures, tokens)
  const inPhrase = coverage(tokens.length, [...choiceMentions, ...figureMentions])
  const inLong = coverage(
    tokens.length,
    [...choiceMentions, ...figureMentions].filter((m) => m.to - m.from > 1),
  )
  const reader = { words: lexicon.vocabulary.numbers, units: lexicon.units }
  const scopes = scopesOf(tokens, lexicon, (at) => inLong[at] ?? false)
  const all = figuresIn(tokens, reader, (at) => inPhrase[at] ?? false)
  const requests = requestsIn(tokens, lexicon, scopes)
  const whatIf = requests.some(({ intent, opens }) => intent === 'what-if' && opens)
  const money = currencyOf(answers, all, lexicon.vocabulary.units.usualCurrency)
  const negations = negationsOf(tokens, scopes, [...choiceMentions, ...all])
  const input: FigureInput = { tokens, lexicon, scopes, negations, whatIf, money, answers }
  const figures = afterChange(all, input)
  const inFigure = coverage(tokens.length, figures)
  const free = figureMentions.filter(({ from, to }) => !(inFigure[from] || inFigure[to - 1]))
  const pairs = pairFigures(figures, free, { tokens, scopes, lexicon, money })
  return { plain, tokens, scopes, figures, choiceMentions, requests, pairs, input }
}

function readAllFigures(
  parts: Parts,
  { asking, answers = {} }: MessageContext,
  into: Findings,
): void {
  const { figures, tokens, input, pairs, choiceMentions } = parts
  const aside = new Map(figures.map((figure) => [figure, setAside(figure, input)]))
  for (const [figure, why] of aside)
    if (why) into.doubts.push({ from: figure.from, to: figure.to, why })
  const open = figures.filter((figure) => !aside.get(figure))
  const noisy = new Set(pairs.filter(({ use }) => use.kind === 'noise').map(({ figure }) => figure))
  const crossed = readBoreByStroke(open, tokens, input.money, into, noisy)
  const paired = new Set<Figure>()
  for (const pair of pairs) {
    if (aside.get(pair.figure) || crossed.has(pair.figure)) continue
    paired.add(pair.figure)
    readPair(pair, input, into)
  }
  let loose = open.filter(
    (figure) => !paired.has(figure) && !crossed.has(figure) && figure.unit?.kind !== 'over',
  )
  if (asking && !into.readings.some(({ key }) => key === asking)) {
    loose = askedFigure(asking, loose, input.money, into)
  }
  const layouts = new Set(
    choiceMentions
      .filter(({ meanings }) => meanings.some((m) => m.kind === 'choice' && m.fact === 'layout'))
      .map(({ from }) => from),
  )
  for (const figure of loose) {
    if (readByUnit(figure, input, into)) continue
    if (readSizeBefore(figure, (at) => layouts.has(at), input, into)) continue
    into.doubts.push({ from: figure.from, to: figure.to, why: 'not clear what this figure is' })
  }
  for (const figure of open) {
    if (figure.unit?.kind === 'over' && !paired.has(figure)) readOverbore(figure, answers, into)
  }
}

function readAllChoices(
  parts: Parts,
  { asking }: MessageContext,
  lexicon: Lexicon,
  into: Findings,
): void {
  const { tokens, scopes, choiceMentions, pairs, input } = parts
  const paid = pairs.filter(
    ({ use, figure }) =>
      use.kind === 'fact' && fact(use.key).kind === 'money' && !input.negations.denies(figure),
  )
  const priced = ({ from, to }: Mention<ChoiceMeaning>): boolean =>
    paid.some(({ mention }) => mention.from < to && from < mention.to) ||
    paid.some(
      ({ mention, use }) =>
        use.kind === 'fact' &&
        ['capsPrice', 'studsPrice'].includes(use.key) &&
        to <= mention.from &&
        mention.from - to <= 2 &&
        scopes.clause[from] === scopes.clause[mention.from],
    )
  readChoices(
    choiceMentions,
    { tokens, lexicon, scopes, negations: input.negations, whatIf: input.whatIf, priced },
    into,
  )
  if (!asking || into.readings.some(({ key }) => key === asking)) return
  const free = (stretch: { from: number; to: number }): boolean =>
    !input.negations.denies(stretch) &&
    !scopes.outside[stretch.from] &&
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

/** A thread stands for itself, unless it is of another part: "7/16-14 head studs". */
function readThreads({ tokens, scopes, input, choiceMentions }: Parts, into: Findings): void {
  tokens.forEach((token, at) => {
    if (token.kind !== 'thread') return
    const stretch = { from: at, to: at + 1 }
    const foreign = choiceMentions.some(
      ({ from, to, meanings }) =>
        meanings.some((m) => m.kind === 'shadow' || (m.kind === 'noun' && m.noun === 'other')) &&
        scopes.clause[from] === scopes.clause[at] &&
        Math.min(Math.abs(from - at), Math.abs(at - to)) <= 3,
    )
    const outside = scopes.outside[at]
    if (foreign) into.doubts.push({ ...stretch, why: 'read as the thread of another part' })
    else if (outside && !(outside === 'hypothetical' && input.whatIf)) {
      into.doubts.push({ ...stretch, why: 'read as about another engine or plan' })
    } else {
      into.readings.push({ key: 'fastenerThread', answer: token.text, ...stretch, strength: 3 })
    }
  })
}

function conclude(
  text: string,
  parts: Parts,
  context: MessageContext,
  lexicon: Lexicon,
  findings: Findings,
): Understanding {
  const { tokens, scopes, requests, plain } = parts
  const asksOf = requests.find(
    ({ intent, opens }) => opens && (intent === 'explain' || intent === 'why'),
  )
  const corrections = scopes.markers
    .filter(({ meanings }) => meanings.includes('correction'))
    .map(({ from }) => from)
  const whatIf = requests.find(({ intent, opens }) => intent === 'what-if' && opens)
  const { settled, corrected } = settle(findings, {
    at: corrections,
    ...(whatIf ? { anewFrom: whatIf.from } : {}),
  })
  const near = (request: Request): number =>
    settled.filter(
      ({ from, strength, key }) =>
        from >= request.from &&
        scopes.sentence[from] === scopes.sentence[request.from] &&
        strength > 0 &&
        fact(key).kind !== 'choice',
    ).length
  const unknowns = unknownsIn(tokens, scopes, lexicon, settled, context.asking)
  const dontKnow = scopes.markers.some(({ meanings }) => meanings.includes('dontKnow'))
  const outcome = intentOf(requests, tokens, {
    facts: asksOf
      ? settled.filter(
          ({ from }) => scopes.sentence[from] !== scopes.sentence[asksOf.from] || near(asksOf) > 0,
        ).length
      : settled.length,
    near,
    corrected,
    dontKnow,
  })
  const asks = outcome.intent === 'why' || outcome.intent === 'explain'
  const request = outcome.request
  const kept = settled.filter(
    ({ from }) =>
      !(
        asks &&
        request &&
        from >= request.from &&
        scopes.sentence[from] === scopes.sentence[request.from]
      ),
  )
  const told =
    asks || outcome.intent === 'undo' || outcome.intent === 'restart'
      ? kept
      : [...kept, ...unknowns]
  const topic = asks && request ? topicOf(request, tokens, scopes, lexicon) : undefined
  const about = topic ?? (asks ? context.asking : undefined)
  return report(text, plain, tokens, told, findings, {
    intent: outcome.intent,
    ...(about ? { topic: about } : {}),
  })
}

function report(
  text: string,
  plain: PlainText,
  tokens: readonly Token[],
  readings: readonly Reading[],
  { doubts }: Findings,
  rest: { intent: Intent; topic?: string },
): Understanding {
  const facts: { [key in FactKey]?: Answer } = {}
  const spans = readings.map(({ key, answer, from, to }) => {
    facts[key] = answer
    const place = originalSpan(plain, tokens[from]?.start ?? 0, tokens[to - 1]?.end ?? 0)
    return { key, ...place }
  })
  const unclear = doubts
    .filter(
      ({ from, to }, i) =>
        !doubts.slice(0, i).some((other) => other.from === from && other.to === to),
    )
    .sort((a, b) => a.from - b.from || a.to - b.to)
    .map(({ from, to, why }) => {
      const { start, end } = originalSpan(plain, tokens[from]?.start ?? 0, tokens[to - 1]?.end ?? 0)
      return { text: text.slice(start, end), why }
    })
  if (plain.cut)
    unclear.push({
      text: '…',
      why: 'the message is longer than 2,000 characters; the rest was not read',
    })
  return { facts, spans, unclear, ...rest }
}
