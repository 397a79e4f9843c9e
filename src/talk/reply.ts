import { UNKNOWN } from '../../shared/answers.ts'
import type { Call } from '../../shared/assessment.ts'
import { type FactKey, fact, isFactKey } from '../../shared/fact-keys.ts'
import type { Rulebook } from '../rulebook/load.ts'
import type { Turn } from './turn.ts'

/** A word of the trade and its explanation in Markdown. */
export interface Explained {
  readonly term: string
  readonly text: string
}

/** Where a reply's words come from: the questions' own, and the glossary behind a function. */
export interface ReplyWords {
  readonly questions: Rulebook['questions']
  readonly explain: (words: string) => Explained | undefined
  readonly routes: Rulebook['routes']
}

/**
 * What the guide says to a message that asks something, in Markdown; links are to
 * pages of the guide, from its root. Undefined when the message only told something.
 */
export function replyTo(
  words: ReplyWords,
  { intent, understanding, alreadyWithin }: Turn,
  asking: FactKey | undefined,
  call?: Call,
): string | undefined {
  const topic = understanding?.topic
  if (alreadyWithin) return alreadyWithin.join('\n\n')
  if (intent === 'why') return whyAsked(words, asNamed(topic) ?? asking)
  if (intent === 'explain') return explained(words, topic, asking)
  if (intent === 'result' && call) return ofRoute(words, topic, call)
  if (intent === 'dont-know' && asking && understanding?.facts[asking] === UNKNOWN) {
    return 'Then the guide assumes something usual for it and says so in the call.'
  }
  return undefined
}

/** "Do I need a girdle?": why that route is called, or why not. */
function ofRoute({ routes }: ReplyWords, id: string | undefined, call: Call): string | undefined {
  const route = routes.find((one) => one.id === id)
  if (!route || call.route === null) return undefined
  if (call.route === id) return `**${route.title}:** that is the call.`
  const why = call.insteadOf.find((one) => one.route === id)?.why
  return why && `**${route.title}?** ${why}`
}

function asNamed(topic: string | undefined): FactKey | undefined {
  return topic !== undefined && isFactKey(topic) ? topic : undefined
}

function whyAsked({ questions }: ReplyWords, key: FactKey | undefined): string {
  if (!key) return 'Every question asked is one whose answer can still change the call.'
  const question = questions.find((one) => one.fact === key)
  return `**${question?.ask ?? fact(key).label}** ${question?.why ?? ''} ${fact(key).help}`
}

function explained(
  { explain }: ReplyWords,
  topic: string | undefined,
  asking: FactKey | undefined,
): string {
  const key = asNamed(topic) ?? (topic === undefined ? asking : undefined)
  if (key) {
    const { label, help, measure } = fact(key)
    return `**${label}.** ${help}\n\n${measure}\n\n[How to find it, step by step](/learn/measuring#${key})`
  }
  const found = explain(topic ?? '')
  return found
    ? `**${found.term}.** ${found.text}`
    : 'I have no entry for that. [All explanations and the glossary](/learn)'
}
