import type { Answer, Answers } from '../../shared/answers.ts'
import { type FactKey, fact } from '../../shared/fact-keys.ts'
import { wholeAnswer } from './answer-asked.ts'
import { readAllChoices } from './choice-stage.ts'
import { defaultVocabulary } from './default-vocabulary.ts'
import { unknownsIn } from './dont-know.ts'
import { readAllFigures } from './figure-stage.ts'
import { type Findings, noFindings, type Reading } from './findings.ts'
import { type Intent, intentOf, type Request } from './intents.ts'
import { type Lexicon, lexiconOf } from './lexicon.ts'
import { type Parts, takeApart } from './message-parts.ts'
import { normaliseText, originalSpan, type PlainText } from './normalise-text.ts'
import { settle } from './settle.ts'
import { mendSpelling } from './spelling.ts'
import { readThreads } from './threads-in-text.ts'
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

function understand(text: string, context: MessageContext, lexicon: Lexicon): Understanding {
  const plain = normaliseText(text)
  const tokens = mendSpelling(tokenise(plain.text), lexicon.speller)
  const whole = context.asking && wholeAnswer(context.asking, tokens, lexicon)
  if (whole) return report(text, plain, tokens, [whole], noFindings(), { intent: 'tell' })
  const parts = takeApart(plain, tokens, context.answers ?? {}, lexicon)
  const findings = noFindings()
  readAllFigures(parts, context.asking, findings)
  readAllChoices(parts, context.asking, findings)
  readThreads(parts, findings)
  return conclude(text, parts, context, findings)
}

function conclude(
  text: string,
  parts: Parts,
  context: MessageContext,
  findings: Findings,
): Understanding {
  const { tokens, scopes, requests, plain, lexicon } = parts
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
  const told = new Set<string>()
  const unclear = doubts
    .filter(({ from, to }) => {
      const place = `${from}-${to}`
      const first = !told.has(place)
      told.add(place)
      return first
    })
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
